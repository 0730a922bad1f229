// Messgeräte: mit Standards verglichen, und was das für ihre Messungen bedeutet.
import type { InstrumentKind, InstrumentWord, VerificationWord } from '../../contract.instrument';
import type { instruments as shape } from '../en/instruments';

export const instruments: typeof shape = {
  title: 'Messgeräte', none: 'Die Anlagendatei nennt keine Messgeräte (docs/plant-file.md, instruments).',
  hint: 'Eine Messung mit einem Gerät, das seinen Standard falsch zeigte oder zu lange mit keinem verglichen wurde, wird aufbewahrt und ist weniger sicher; die Prüfung sagt es.',
  kinds: { photometer: 'Photometer', comparator: 'Komparator', meter: 'Messgerät' } as Record<InstrumentKind, string>,
  words: { not_verified: 'noch nicht überprüft', in_order: 'in Ordnung', overdue: 'Überprüfung überfällig', failed: 'zeigte seinen Standard falsch' } as Record<InstrumentWord, string>,
  verdicts: { none: '', within: 'innerhalb der Toleranz', outside: 'außerhalb der Toleranz' } as Record<VerificationWord, string>,
  every: (days: string) => days === '1' ? 'jeden Tag' : `alle ${days} Tage`, until: (day: string) => `nächste bis ${day}`, verify: 'Mit Standard vergleichen', test: 'Wofür', standard: 'Standard', standardHint: 'Name oder Farbe, und Nummer', nominal: 'Soll zeigen', tolerance: 'Toleranz, nach beiden Seiten', toleranceHint: 'wie im Zertifikat', reading: 'Zeigt',
  preview: (off: string) => `um ${off} daneben`, save: 'Speichern', cancel: 'Abbrechen', saved: (verdict: string) => `Gespeichert: ${verdict}.`, waiting: 'Auf diesem Gerät aufbewahrt, bis der Server erreichbar ist.', refused: 'Der Server hat es nicht angenommen', dropSure: 'Diese Überprüfung endgültig verwerfen?', need: 'Das wird gebraucht.', number: 'Keine Zahl. Ziffern mit einem Komma oder Punkt.', positive: 'Mehr als null.',
  line: (reading: string, nominal: string, tolerance: string) => `zeigte ${reading}, soll ${nominal} \u00b1 ${tolerance}`, history: 'Überprüfungen', by: (who: string) => `von ${who}`,
  checklist: 'Der Messsatz, vor einem Rundgang', list: [
    'Küvetten klar, unzerkratzt, innen trocken; Deckel, die schließen; kein Fleck der letzten Messung.', 'Photometer: Lichtschutz, saubere Aufnahme, frische Batterie, seine Standards zur Hand.', 'Messgeräte: Sensor feucht und sauber, ein haltbarer Puffer oder eine haltbare Prüflösung.',
    'Reagenzien haltbar und trocken in ihrer Folie; die richtige Sorte für das Gerät.', 'Rührstäbe, Spritze oder Pipette zum Verdünnen, Wasser ohne Chlorzehrung.', 'Bürste, Tuch, Probenflasche, Handschuhe und Schutzbrille, wo mit Chemikalien umgegangen wird.',
  ],
  reagents: 'Reagenzien und Chargen',
};
