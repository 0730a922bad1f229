// Die Werkzeuge über den Verläufen eines Beckens: Linien, ein anderer Tag, Notizen, Marken, Dateien.
import type { MarkKind } from '../../contract.notes';
import type { Compared } from '../../pool/ghost';
import type { Look } from '../../pool/look';
import type { stripTools as shape } from '../en/stripTools';

const times = (n: number, one: string, many: string) => (n === 1 ? `1 ${one}` : `${n} ${many}`);

export const stripTools: typeof shape = {
  lines: 'Linien', looks: { both: 'Beide', corrected: 'Korrigiert', raw: 'Roh' } satisfies Record<Look, string>,
  compare: 'Vergleichen mit', nothing: 'keinem anderen Tag', compared: { yesterday: 'dem Tag davor', last_week: 'der Woche davor' } satisfies Record<Compared, string>, tooLong: 'bis zu einem Monat',
  ghost: (what: string, from: string, to: string) => `\u22ef ${what}: ${from} \u2013 ${to}`, ghostReads: (what: string, v: string) => `${what} ${v}`,
  files: 'Speichern als', csv: 'Tabelle (CSV)', png: 'Bild (PNG)', svg: 'Zeichnung (SVG)',
  summary: {
    none: 'In der gezeigten Zeit wurde nichts gemessen.', flowed: 'Es floss, solange gemessen wurde.', stopped: (at: string) => `Ohne Durchfluss um ${at}.`, last: (v: string, at: string) => `Zuletzt ${v} um ${at}.`, least: (v: string, at: string) => `Niedrigster ${v} um ${at}.`, most: (v: string, at: string) => `Höchster ${v} um ${at}.`,
    gaps: (n: number, longest: string) => n === 0 ? 'Keine Lücke.' : `${times(n, 'Lücke', 'Lücken')}, die längste ${longest}.`,
    tests: (n: number) => `${times(n, 'Handmessung', 'Handmessungen')} in der gezeigten Zeit.`,
  },
  marks: {
    label: 'Was geschah', kinds: {
      unknown: '', test: 'Handmessung', dose: 'Zugabe', calibration: 'Kalibrierung', probe: 'Arbeit an einer Sonde', alarm: 'Alarm', wash: 'Filter gespült', stock: 'Chemikalien', job: 'Auftrag', pool: 'Becken', laboratory: 'Labor', gap: 'Lücke', plan: 'Anlagendatei',
    } satisfies Record<MarkKind, string>,
    open: { dose: 'Zugaben', calibration: 'Sonde', probe: 'Sonde', alarm: 'Alarm', wash: 'Pumpen und Filter', stock: 'Chemikalien', job: 'Aufträge', pool: 'Betriebsbuch', laboratory: 'Labor', plan: 'Betriebsbuch', gap: 'Betriebsbuch' } as Partial<Record<MarkKind, string>>,
    one: (kind: string, subject: string, at: string) => `${kind}, ${subject}, ${at}`, several: (n: number, kinds: string, from: string, to: string) => `${n} Marken, ${from} bis ${to}: ${kinds}`,
    until: (at: string) => `bis ${at}`, by: (name: string) => `von ${name}`, itself: 'von selbst', close: 'Schließen', more: 'In dieser Zeit gibt es mehr, als markiert ist: hier stehen die neuesten. Näher heran zeigt den Rest.', none: 'In dieser Zeit ist nichts markiert.', failed: 'Was geschah, ist nicht abrufbar.',
  },
  note: {
    lane: 'Notizen', add: 'Notiz schreiben', title: 'Eine Notiz zu dieser Zeit', correcting: 'Notiz berichtigen', retracting: 'Notiz zurücknehmen', lead: 'Über die Verläufe ziehen, um die Zeit zu wählen, oder eintippen.', from: 'Von', to: 'Bis', text: 'Was gesehen oder getan wurde', why: 'Warum sie geändert wird', whyGone: 'Warum sie zurückgenommen wird', by: 'Wer sie schreibt',
    save: 'Notiz speichern', correct: 'Berichtigen', retract: 'Zurücknehmen', cancel: 'Abbrechen', hint: 'nach der Uhr der Anlage', textHint: 'Zum Beispiel: Schulfest, vierzig Kinder; oder: Filter 2 geöffnet.',
    needText: 'Angeben, was gesehen oder getan wurde.', needBy: 'Angeben, wer sie schreibt.', needWhy: 'Grund angeben.', needTime: 'Datum und Uhrzeit angeben.', endsFirst: 'Endet, bevor sie beginnt.', toCome: 'Das liegt in der Zukunft: eine Notiz spricht von dem, was war.', tooLong: 'Höchstens ein Jahr.',
    retracted: 'zurückgenommen', corrected: 'berichtigt', waiting: 'wartet auf das Senden', refused: 'Abgelehnt', edit: 'Im Formular öffnen', drop: 'Verwerfen', dropSure: 'Diese Notiz endgültig verwerfen?', earlier: 'Was sie vorher sagte', saidAt: (who: string, at: string) => `${who}, ${at}`, span: (from: string, to: string) => (from === to ? from : `${from} \u2013 ${to}`), label: (text: string, span: string, state: string) => `Notiz, ${span}: ${text}${state && ` (${state})`}`, moreRows: (n: number) => `und ${n} weitere: näher heran`, failed: 'Die Notizen sind nicht abrufbar.', gone: 'Eine zurückgenommene Notiz bleibt im Betriebsbuch.',
  },
  keys: 'N schreibt eine Notiz; Ziehen mit der Umschalttaste oder nach langem Druck wählt ihre Zeit.',
};
