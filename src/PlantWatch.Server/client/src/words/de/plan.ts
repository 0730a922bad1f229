import type { plan as shape } from '../en/plan';

// Der Dosierplan.

export const plan: typeof shape = {
  lead: 'Von den neuesten Messungen in jedes Band, in sicheren Schritten zu geringen Kosten. Ein Rat, nie eine Anweisung: es entscheiden die Leute der Anlage; örtliche Vorschriften und die Sicherheitsdatenblätter der Produkte gehen vor.',
  bathers: 'Ist das Wasser frei von Badegästen?', clear: 'Niemand ist drin', notClear: 'Jemand ist drin', wish: 'Neben der Sicherheit', fewer: 'Wenige Gaben', cheapest: 'Geringste Produktkosten',
  working: 'Wird berechnet\u2026', unreachable: 'Der Server ist nicht erreichbar, und ohne ihn wird kein Plan berechnet. Neuer Versuch folgt von selbst.', wrong: 'Der Server nimmt diese Zahlen nicht an:',
  bands: 'Das Wasser und seine Bänder', figure: 'Wert', now: 'Jetzt', band: 'Band', then: 'Nach dem Plan', practice: 'gängige Praxis', from: (source: string) => `nach ${source}`,
  standing: { unknown: '', not_tested: 'nicht gemessen', inside: 'innerhalb', within_uncertainty: 'innerhalb der Messunsicherheit: zuerst wiederholen', below: 'darunter', above: 'darüber' },
  figures: { ph: 'pH-Wert', total_alkalinity: 'Säurekapazität', calcium_hardness: 'Calciumhärte', free_chlorine: 'Freies Chlor', cyanuric_acid: 'Cyanursäure', dissolved_solids: 'Gelöste Stoffe', saturation_index: 'Sättigungsindex' },
  atLeast: (v: string) => `mindestens ${v}`, atMost: (v: string) => `höchstens ${v}`, between: (a: string, b: string) => `${a} bis ${b}`, plusMinus: (v: string) => `\u00b1 ${v}`,
  steps: 'Schritte', tickHint: 'Die Haken bleiben nur auf dieser Seite. Was gegeben wurde, kommt ins Betriebsbuch über die', dosePage: 'Seite Zugabe', done: (what: string) => `Erledigt: ${what}`,
  part: (k: number, n: number) => n > 1 ? `Gabe ${k} von ${n}` : '', strength: (v: string, age: string) => `${v}\u00a0% nach Masse, ${age}`, ageDays: (d: number) => d === 0 ? 'bekannt seit heute' : `bekannt seit ${d}\u00a0T`, ageUnknown: 'Alter unbekannt',
  aerate: 'Kohlendioxid austreiben', letChlorineFall: 'Freies Chlor abklingen lassen', dilute: 'Zuerst Füllwasser', dilution: (percent: string, drain: string, overflow: string) => `${percent}\u00a0% des Wassers ersetzen: ${drain} ablassen und auffüllen, oder ${overflow} zulaufen lassen, während es überläuft.`,
  wait: (h: string) => `Dann ${h}\u00a0h umwälzen und messen`, waitTest: 'Nach der Messung gehen', predicted: 'Vorhergesagt', care: 'Schutzausrüstung und Umgang', volume: (v: string) => `Wasser des Kreislaufs: ${v}`,
  cost: (v: string) => `Produkte kosten etwa ${v} in der Währung der Anlage`, mass: (v: string) => `${v} Produkte insgesamt; Kosten mangels Preisen nicht berechnet`, says: 'Zu wissen', refused: 'Bevor es einen Plan gibt', leftOut: 'Ausgelassen', always: 'Immer',
  fill: 'Das Füllwasser', fillLead: 'Nur nötig, wo Produkte allein es nicht schaffen.', askFill: 'Mit diesem Füllwasser planen', notNumber: 'Keine Zahl. Ziffern mit einem Komma oder Punkt.',
};
