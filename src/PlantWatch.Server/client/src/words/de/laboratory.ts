import type { alarmHealth as healthShape, laboratory as shape } from '../en/laboratory';

// Laborergebnisse, und die Güte der Alarme.

export const laboratory: typeof shape = {
  title: 'Labor',
  lead: 'Was nur ein Labor sehen kann. Gute Chemie beantwortet keinen Befund: das tut eine neuere Probe innerhalb des Grenzwerts oder eine berechtigte Person mit Begründung. Örtliche Vorschriften und die Gesundheitsbehörde gehen vor.',
  none: 'Noch kein Ergebnis eingetragen.', inForce: 'Grenzwerte in Kraft', noLimits: 'Keine Grenzwerte in Kraft: nichts heißt normal.', planned: (days: string) => days === '1' ? 'Probe jeden Tag' : `Probe alle ${days} Tage`, notPlanned: 'keine Proben geplant',
  due: (at: string) => `nächste Probe fällig ${at}`, resample: (at: string) => `Nachprobe fällig ${at}`,
  verdict: { no_limit: 'kein Grenzwert in Kraft', inside: 'innerhalb', not_proven: 'nicht belegt', outside: 'außerhalb' },
  open: 'Steht offen: außerhalb seines Grenzwerts', closed: (by: string, at: string) => `abgeschlossen von ${by}, ${at}`, corrected: 'durch späteren Eintrag berichtigt',
  sampled: 'Probenahme', reported: 'Befund vom', by: 'eingetragen von', number: 'Probe', water: 'Chemie bei der Probenahme', noWater: 'Keine Handmessung am Tag davor und keine verlässliche Sonde zu der Zeit.', probe: 'Sonde', test: 'von Hand',
  limit: (v: string, ml: string) => `Grenzwert ${v} in ${ml}\u00a0mL`, per: (v: string, ml: string) => `${v} in ${ml}\u00a0mL`, nd: 'nicht nachweisbar',
  enter: 'Befund eintragen', pool: 'Becken', point: 'Probenahmestelle', points: { pool: 'Becken', balance_tank: 'Schwallwasserbehälter', outlet: 'Tiefste Stelle oder Ablauf', cell: 'Messzelle', unknown: 'Nicht angegeben' } as Record<string, string>,
  place: 'Stelle in Worten', lab: 'Labor', sampleNumber: 'Probennummer', counts: 'Zahlen wie gedruckt', organism: 'Keim', colonyCount: 'Koloniezahl, 36\u00a0\u00b0C', legionella: 'Legionellen', count: 'Anzahl', volume: 'in', senses: { counted: '=', below: '<', above: '>', not_detected: 'keine' },
  note: 'Bemerkung', save: 'Befund speichern', needNumber: 'Die Anzahl wie gedruckt angeben', needOne: 'Mindestens eine Anzahl eintragen', needPool: 'Becken wählen', needTime: 'Angeben, wann', need: 'Nötig',
  close: 'Dieses Ergebnis abschließen', closeLead: 'Nur für ein Ergebnis, das kein Befund war oder das die Gesundheitsbehörde geklärt hat. Betriebsleitung, Technikleitung oder Administration laut Anlagendatei unterschreibt mit Name und Grund.', why: 'Warum es abgeschlossen werden kann', closeNow: 'Abschließen',
  sampling: 'Probenahme', facts: [
    'Sterile Flasche mit Natriumthiosulfat, damit das Chlor in der Flasche nicht weiterwirkt (gängige Praxis; ISO 19458, aus dem Gedächtnis). Nie ausspülen.',
    'Freies Chlor und pH-Wert an derselben Stelle zur selben Zeit messen und als Prüfung eintragen: sie stehen dann neben der Anzahl.',
    'Kühl und dunkel, 2 bis 8\u00a0\u00b0C, und am selben Tag ins Labor (gängige Praxis; ISO 19458, aus dem Gedächtnis). Die eigenen Zeiten beim Labor erfragen.',
    'Stelle und Uhrzeit auf der Flasche vermerken. Eine Nachprobe wird an derselben Stelle genommen.',
  ],
};

export const alarmHealth: typeof healthShape = {
  month: 'Monat', people: 'Personen gleichzeitig im Dienst', print: 'Drucken',
  lead: (told: string, hour: string) => `${told === '1' ? '1 Ruf' : `${told} Rufe`}; ${hour} je Stunde und Person.`, observed: (from: string, to: string) => `Beobachtet von ${from} bis ${to}; Mittelwerte über diese Zeit.`,
  note: 'Gezählt wird, was jemanden ruft: gekommen, erneut gemeldet oder nach einer Zurückstellung noch anstehend. Was zurückgestellt, unterdrückt, außer Betrieb oder unter seiner Ursache ist, ruft niemanden.',
  figure: 'Kennzahl', here: 'Hier', target: 'Richtwert', known: 'Bekannt aus', provenance: { '': '', published: 'veröffentlicht', secondary: 'zweiter Hand', from_memory: 'Gedächtnis' } as Record<string, string>,
  meets: 'erfüllt', not: 'nicht erfüllt', source: 'Richtwerte: ISA-18.2, IEC 62682 und EEMUA 191; die Dokumente selbst lagen nicht vor.',
  days: 'Rufe je Tag', daysSaid: (most: string) => `Balken je Tag, höchstens ${most}`, busiest: 'Die zehn häufigsten', none: 'Keine.', share: 'Anteil', times: 'Rufe', chattering: 'Flatternd', stale: 'Über einen Tag angestanden', floods: 'Alarmfluten', until: 'bis',
};
