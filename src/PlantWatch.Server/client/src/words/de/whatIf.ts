import type { whatIf as shape } from '../en/whatIf';

// Die Seite, auf der man Änderungen des Wassers ausprobiert.

export const whatIf: typeof shape = {
  lead: 'Eine Eingabe bewegen und sehen, was sie bewirkt. Nichts wird aufgezeichnet und nichts dosiert.',
  closed: 'Ohne Austausch mit der Luft gerechnet: im Becken entweicht CO\u2082, und der pH-Wert steigt in den Stunden danach wieder. Zum Nachdenken, keine Dosierung: vorher und nachher messen.',
  inputs: 'Das Wasser', now: 'Jetzt', then: 'Was wäre', change: 'Änderung', present: (v: string) => `jetzt ${v}`, backTo: (v: string) => `zurück auf ${v}`, notTested: 'nicht gemessen',
  startedNow: 'Beginnt beim Wasser, wie es ist.', startedAt: (clock: string) => `Begann beim Wasser von ${clock}.`, reset: 'Zurück zum Jetzt',
  notNumber: 'Keine Zahl. Ziffern mit einem Komma oder Punkt.',
  doses: 'Zugeben', add: 'Produkt hinzufügen', choose: 'Wählen\u2026', atHand: 'Vorhanden', others: 'Handelsübliche, mit üblichem Gehalt', remove: (name: string) => `${name} wieder entfernen`, removeShort: 'Entfernen',
  amount: (name: string) => `${name}, Kilogramm`, volume: 'Wasser, das es aufnimmt', noProducts: 'Die Anlagendatei nennt kein Produkt.',
  volumeHint: (v: string) => `${v}: Becken und Schwallwasserbehälter des Kreislaufs, laut Anlagendatei.`,
  care: 'Mengen nur zum Nachdenken. Nie zwei Produkte zusammenbringen; was hinein darf, wo und mit welcher Vorsicht, steht auf der', carePage: 'Seite Zugabe',
  spent: 'Wenn das zugegebene Chlor verbraucht ist', slider: (name: string) => `${name}, Schieber`,
  results: 'Was es bewirkt', rows: {
    ph: 'pH-Wert', hypochlorousAcid: 'Hypochlorige Säure', hypochlorousShare: 'Anteil am freien Chlor', saturationIndex: 'Sättigungsindex', freeChlorine: 'Freies Chlor',
    totalAlkalinity: 'Säurekapazität', calciumHardness: 'Calciumhärte', dissolvedSolids: 'Gelöste Stoffe', cyanurate: 'Cyanursäure',
  },
  short: { ph: 'pH', hypochlorousAcid: 'HOCl', hypochlorousShare: 'HOCl', saturationIndex: 'Index' },
  claim: 'Index nach dem Modell mit Ionenpaaren: \u00b1 0,06 ist das Höchste, was es beanspruchen darf, ohne die Unsicherheit der Messungen.',
  same: 'gleich', unknown: '\u2013',
  stillShort: 'Vom letzten möglichen Wasser.', stale: 'Zahlen des letzten möglichen Wassers. Markiertes Feld berichtigen.', unreachable: 'Der Server ist nicht erreichbar: die Zahlen bleiben stehen. Neuer Versuch folgt von selbst.',
  working: 'Wird berechnet\u2026', spoken: (ph: string, hocl: string, index: string) => `pH-Wert ${ph}, hypochlorige Säure ${hocl}, Sättigungsindex ${index}`,
  curves: 'Kurven', against: 'Aufgetragen über', againstPh: 'pH-Wert', againstDose: (name: string) => `Zugabe von ${name}`, kilograms: 'kg', of: (what: string, against: string) => `${what} über ${against}`,
  legend: (dose: boolean): string => dose ? '\u25c6 was wäre \u00b7 getönt: Gleichgewicht, oder die Grenzwerte des Beckens.' : '\u25c6 was wäre \u00b7 \u25cb jetzt \u00b7 \u2504 das jetzige Wasser \u00b7 getönt: Gleichgewicht, oder die pH-Grenzwerte des Beckens.',
  table: 'Die Kurven in Zahlen', noCurve: 'Von diesem Wasser ist zu wenig bekannt für eine Kurve.', runs: (what: string, a: string, b: string, from: string, to: string) => `${what} geht von ${a} auf ${b} zwischen ${from} und ${to}.`,
};
