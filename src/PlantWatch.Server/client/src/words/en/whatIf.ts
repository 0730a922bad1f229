// The page where a person tries changes of the water.

export const whatIf = {
  lead: 'Move an input and see what it does. Nothing is recorded and nothing is dosed.',
  closed: 'Reckoned closed to the air: in a pool CO\u2082 leaves the water, and pH creeps up again in the hours after. A guide for thinking, not a dose: test before and after.',
  inputs: 'The water', now: 'Now', then: 'What if', change: 'Change', present: (v: string) => `now ${v}`, backTo: (v: string) => `back to ${v}`, notTested: 'not tested',
  startedNow: 'Starts from the water as it is.', startedAt: (clock: string) => `Started from the water of ${clock}.`, reset: 'Back to now',
  notNumber: 'Not a number. Digits with one comma or point.',
  doses: 'Put in', add: 'Add a product', choose: 'Choose\u2026', atHand: 'At hand', others: 'Of the trade, at usual strength', remove: (name: string) => `Take ${name} out again`, removeShort: 'Take out',
  amount: (name: string) => `${name}, kilograms`, volume: 'Water that takes it', noProducts: 'The plant file lists no product.',
  volumeHint: (v: string) => `${v}: the circuit\u2019s pools and balance tank, as the plant file has them.`,
  care: 'Amounts are for thinking only. Never put two products together; what may go in, where and with which care stands on the', carePage: 'dose page',
  spent: 'After the added chlorine is used up', slider: (name: string) => `${name}, slider`,
  results: 'What it does', rows: {
    ph: 'pH', hypochlorousAcid: 'Hypochlorous acid', hypochlorousShare: 'Share of free chlorine', saturationIndex: 'Saturation index', freeChlorine: 'Free chlorine',
    totalAlkalinity: 'Total alkalinity', calciumHardness: 'Calcium hardness', dissolvedSolids: 'Dissolved solids', cyanurate: 'Cyanuric acid',
  },
  short: { ph: 'pH', hypochlorousAcid: 'HOCl', hypochlorousShare: 'HOCl', saturationIndex: 'Index' },
  claim: 'Index by the speciated model: \u00b1 0.06 is the most it may claim, the tests\u2019 own uncertainty not counted.',
  same: 'same', unknown: '\u2013',
  stillShort: 'Of the last possible water.', stale: 'Figures of the last possible water. Mend the marked field.', unreachable: 'The server cannot be reached: the figures stand still. Trying again by itself.',
  working: 'Working it out\u2026', spoken: (ph: string, hocl: string, index: string) => `pH ${ph}, hypochlorous acid ${hocl}, saturation index ${index}`,
  curves: 'Curves', against: 'Against', againstPh: 'pH', againstDose: (name: string) => `Dose of ${name}`, kilograms: 'kg', of: (what: string, against: string) => `${what} against ${against}`,
  legend: (dose: boolean): string => dose ? '\u25c6 what if \u00b7 shaded: balanced, or the pool\u2019s limits.' : '\u25c6 what if \u00b7 \u25cb now \u00b7 \u2504 the present water \u00b7 shaded: balanced, or the pool\u2019s limits of pH.',
  table: 'The curves in figures', noCurve: 'Too little is known of this water to draw a curve.', runs: (what: string, a: string, b: string, from: string, to: string) => `${what} goes from ${a} to ${b} between ${from} and ${to}.`,
};
