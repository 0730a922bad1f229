// Die Seite einer Sonde: wem zu glauben ist, und was jetzt zu tun ist.
import type { Believe } from '../../contract.probe';
import type { probePage as shape } from '../en/probePage';

export const probePage: typeof shape = {
  whom: { neither: 'Keinem allein glauben', probe: 'Der Sonde glauben', tests: 'Den Handmessungen glauben', either: 'Sie stimmen überein' } as Record<Believe, string>,
  believed: 'Bestwert', shows: 'Sonde zeigt', lastTest: 'Letzte Handmessung', expected: 'Erwartet', noTest: 'noch keine Handmessung', notBelieved: 'noch nicht bekannt', orpAsRead: 'wie gemessen',
  testDoubted: 'zweifelhaft', doNow: 'Was jetzt zu tun ist', doNext: 'Zu tun', then: 'dann', calibrate: 'Kalibrieren', toDecision: 'Zur Entscheidung', writeFault: 'Störung aufschreiben', enter: 'Prüfung eintragen',
  kept: 'Der Server antwortet nicht: dies kam zuletzt an.',
  restsOn: (n: number) => (n === 1 ? 'Beruht auf 1 Prüfung, Probe' : `Beruht auf ${n} Prüfungen, neueste Probe`),
  drift: 'Drift', aMonth: 'im Monat', sensitivity: 'Empfindlichkeit', testsOff: 'Handmessungen gemeinsam daneben', figures: 'Zahlen',
  bias: {
    title: 'Wie weit sie danebenliegt, im Zeitverlauf', now: 'jetzt', maintenance: 'Wartungsbedarf', out: 'außerhalb der Spezifikation', reads: 'zeigt zu hoch', readsLow: 'zeigt zu niedrig',
    legend: '\u25cf nach einer Prüfung, mit Bereich (k = 2) \u00b7 \u25c7 Prüfung beiseitegelegt \u00b7 \u25bc Arbeit oder Kalibrierung \u00b7 \u2504 ab jetzt fortgeschrieben.',
    label: (v: string, u: string, at: string) => `Abweichung im Zeitverlauf. Bei der letzten Prüfung ${v} \u00b1 ${u}; die Grenze zum Wartungsbedarf liegt bei ${at}.`,
    nowIs: (v: string, u: string, unit: string) => `Jetzt ${v} \u00b1 ${u}${unit}.`,
    driftIs: (v: string, u: string, unit: string) => `Sie wandert um ${v} \u00b1 ${u}${unit} im Monat.`,
    earliest: (limit: string, day: string) => `Die Grenze von ${limit} kann ab ${day} erreicht sein.`,
    perhaps: (limit: string) => `Die Grenze von ${limit} liegt am Rand dessen, was die Prüfungen zeigen können (k = 2).`,
    likely: (day: string, latest: string | null) => latest ? `Wahrscheinlich am ${day}, spätestens am ${latest}.` : `Wahrscheinlich am ${day}.`,
    reached: (limit: string) => `Die Grenze von ${limit} ist erreicht.`,
    all: 'Alles', days: (n: number) => n === 1 ? '1 Tag' : `${n} Tage`, range: 'Gezeigte Zeit',
  },
  verdicts: {
    title: 'Was die Prüfungen sagten', since: 'Seither aufgenommen: eine Wiederholung bestätigte sie.', nowDoubted: 'Nach heutigem Stand beiseitegelegt.', older: 'Ältere Prüfungen zeigen', loading: 'Lädt\u2026',
    failed: 'Die älteren Prüfungen sind nicht abrufbar.', none: 'Noch keine Prüfung. Die erste, die sich vergleichen lässt, sagt mehr als jeder Messwert.',
  },
  agreement: {
    title: 'Sonde gegen Handmessung', few: 'Drei vergleichbare Handmessungen sind nötig, bevor sich die Übereinstimmung zeigen lässt.',
    says: (n: number, bias: string, low: string, high: string, unit: string) => `Über ${n} Handmessungen ist die mittlere Differenz, Sonde minus Handmessung, ${bias}${unit}; 19 von 20 Differenzen liegen zwischen ${low} und ${high}${unit}.`,
    together: 'Die Handmessungen eines Geräts und einer Charge können alle gemeinsam danebenliegen. Die Abweichung oben berücksichtigt das; diese beiden Bilder nicht.',
    difference: 'Differenz gegen Mittel', regression: 'Sonde gegen Handmessung', failed: 'Das Bild ist nicht abrufbar.', png: 'als PNG', svg: 'als SVG',
  },
  learned: {
    title: 'Die eigene Kennlinie dieses Beckens', silent: 'Still, bis genug gelernt ist: noch wird nichts danach beurteilt.', speaks: 'Es ist genug gelernt, um danach zu urteilen.',
    checks: 'Gelernt aus Prüfungen', of: (n: number, needed: number) => `${n} von mindestens ${needed}`, days: 'Verteilt über', ofDays: (d: string, needed: string) => `${d} von mindestens ${needed}\u00a0T`,
    since: (day: string) => `Neu begonnen am ${day}, nach Arbeit an der Sonde; was vorher gelernt wurde, zählt nicht mehr.`,
    anew: 'Neu begonnen; was vorher gelernt wurde, zählt nicht mehr.',
    level: (hocl: string) => `Bei ${hocl}\u00a0mg/L hypochloriger Säure`, slope: 'Bei zehnmal so viel',
    own: 'Diese Kennlinie gehört allein diesem Becken und dieser Elektrode. Aus Millivolt werden nie mg/L.',
  },
  signal: {
    title: 'Was das Signal für sich sagt', good: 'Nichts spricht gegen das Signal.', unknown: 'Noch nicht lange genug gehört.', response: 'Ansprechen (Zeitkonstante)', minutes: 'min',
    healthy: 'nicht träge, oder nicht bekannt', wanders: 'Wandert üblicherweise in 2\u00a0h', notYet: 'noch nicht bekannt', spikes: 'Spitzen in letzter Zeit', leapt: 'Letzter Sprung', flow: 'Zuletzt ohne Durchfluss', never: 'nie gesehen',
    lag: 'Kommt nach der eigenen Zeit an', same: 'Unverändert seit',
  },
  strips: { shaded: 'schraffiert: kein Durchfluss', event: '\u25bc Kalibrierung oder Arbeit', doubted: '\u25c7 Handmessung beiseitegelegt' },
};
