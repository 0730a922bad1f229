// Grenzwertpakete: was gewählt, was bestätigt ist, was gilt.
import type { Holds, LimitsWord, RowGrade, RowProvenance } from '../../contract.limits';
import type { limits as shape } from '../en/limits';

const rows = (n: number) => n === 1 ? '1 Zeile' : `${n} Zeilen`;

export const limits: typeof shape = {
  title: 'Grenzwerte', loading: 'Grenzwerte werden abgerufen.',
  lead: 'Ein Paket ist eine Abschrift dessen, was eine Behörde verlangt. Eine Zeile daraus begrenzt nichts, bis eine Person sie mit dem Dokument selbst verglichen hat. Die örtliche Vorschrift geht vor.',
  noPack: 'Kein Grenzwertpaket ist gewählt.',
  noPackMeans: 'Überwacht werden nur die Grenzwerte, die die Anlagendatei selbst den Becken gibt, und niemand hat sie hier mit einer Vorschrift verglichen. Um nach einer Behörde zu gehen, ihr Paket in der Anlagendatei nennen und die Datei neu einlesen:',
  noPackKey: 'limit_pack: who-2006', noPackList: 'Pakete, die der Server mitbringt',
  superseded: 'abgelöst', supersededMeans: 'Eine neuere Ausgabe hat es ersetzt.',
  progress: (done: number, all: number) => `${done} von ${rows(all)} bestätigt`,
  allDone: 'Jede Zeile, die diese Becken betrifft, ist bestätigt.',
  filter: 'Nur Zeilen, die meine Becken betreffen', shown: (n: number, all: number) => `${n} von ${all} gezeigt`, noneShown: 'Keine Zeile dieses Pakets betrifft diese Becken.',
  by: 'Wer bestätigt', document: 'Vorliegendes Dokument und Abschnitt', documentHint: 'Etwa Titel, Ausgabe und Abschnitt. Bleibt auf diesem Gerät für die nächste Zeile.',
  may: (names: string) => `Bestätigen darf: ${names}.`, anybody: 'Nennt die Anlagendatei keine Personen, darf jeder bestätigen; nennt sie welche, dann Technikleitung oder Administration.',
  needDocument: 'Dokument und Abschnitt nennen, die vorliegen.', needWhy: 'Angeben, warum zurückgenommen wird.',
  confirm: 'Bestätigen', notHere: 'Betrifft diese Anlage nicht', revoke: 'Zurücknehmen', why: 'Warum', cancel: 'Abbrechen', send: 'Zurücknehmen',
  confirmedBy: (by: string, at: string) => `Bestätigt von ${by}, ${at}`, judgedAway: (by: string, at: string) => `Betrifft diese Anlage nicht, sagt ${by}, ${at}`,
  waits: 'Nicht bestätigt', changed: 'Diese Zeile hat sich seit der Bestätigung geändert und ist neu zu bestätigen.',
  toJudge: 'Von einer Person zu beurteilen', pools: 'Becken', source: 'Quelle', readOnly: 'Zum Lesen: sie setzt keine überwachte Zahl.',
  raises: (by: string) => `hebt das Minimum um ${by}`, least: (v: string) => `\u2265 ${v}`, most: (v: string) => `\u2264 ${v}`, between: (a: string, b: string) => `${a} bis ${b}`,
  holds: { yes: 'trifft zu', unknown: 'nicht bekannt', no: 'trifft nicht zu' } as Record<Holds, string>,
  grades: { operating: 'Betriebsgrenze', closure: 'schließt das Becken', guide: 'Richtwert, nie ein Alarm' } as Record<RowGrade, string>,
  provenance: {
    from_memory: 'Aus dem Gedächtnis: am Dokument prüfen', secondary: 'Aus zweiter Hand: am Dokument prüfen', published: 'Im Dokument oder auf einer amtlichen Seite gesehen',
  } as Record<RowProvenance, string>,
  stops: 'Stopps, die immer gelten', stopsMean: 'Außerhalb davon gehört niemand ins Wasser, was immer die Grenzwerte sagen. Gängige Praxis; die örtliche Vorschrift geht vor.',
  stopsEdit: 'Die Anlagendatei darf einen mit Begründung verschärfen; lockern darf nur die Administration, mit Namen. Entfernen lässt sich keiner.',
  bottom: 'Beckenboden', bottomSeen: 'muss sichtbar sein', usual: (range: string) => `üblich ${range}`, stopBy: (by: string) => `${by} steht dafür ein`,
  now: 'Was jetzt gilt', own: 'eigener der Anlage', noBounds: 'Nichts wird überwacht.',
  byBalance: 'Verglichen mit dem Gleichgewicht aus einem vollen Satz Messungen (R-018): pH-Wert, Säurekapazität, Calciumhärte und Temperatur.', byStop: 'Vom Stopp überwacht: jede Prüfung fragt, ob der Beckenboden sichtbar ist.',
  undecided: 'Nicht zu entscheiden', notMeasured: 'Hier nicht gemessen', notMeasuredMeans: 'Das Becken hat keine Sonde dafür, und die Behörde verlangt keine. Auf diese Zeilen wartet nichts.',
  turned: (range: string, own: string) => `Überwacht als ${range} gegen ${own}, die Elektrode der Beckensonde.`,
  turnedFrom: (against: string) => `Die Zeile gilt gegen ${against}: umgerechnet mit den Potentialen bei 25\u00a0\u00b0C.`,
  turnedOpen: (against: string, spread: string) => `Die Zeile sagt ${against} ohne Füllung, das lässt ${spread}\u00a0mV offen: das strengere Ende gilt.`,
  turnedUnnamed: (spread: string) => `Die Zeile nennt keine Elektrode, das lässt ${spread}\u00a0mV zwischen den üblichen offen: das strengste Ende gilt.`, showRow: 'Zeile zeigen',
  words: { none: 'Keine Grenzwerte', unconfirmed: 'Keine Grenzwerte in Kraft: Zeilen sind nicht bestätigt', own_only: 'Eigene Grenzwerte der Anlage', in_force: 'Grenzwerte in Kraft' } as Record<LimitsWord, string>,
  poolWaits: (n: number) => `Keine Grenzwerte in Kraft: ${rows(n)} nicht bestätigt`, poolNone: 'Keine Grenzwerte: für dieses Becken sind keine gesetzt', poolOwn: 'Überwacht werden die eigenen Grenzwerte der Anlage',
};
