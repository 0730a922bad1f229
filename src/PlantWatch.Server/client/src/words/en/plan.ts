// The dosing plan.

export const plan = {
  lead: 'From the newest tests to inside every band, in safe steps at low cost. Advice, never an order: the plant\u2019s own people decide, and local codes and the products\u2019 safety data sheets come first.',
  bathers: 'Is the water clear of bathers?', clear: 'Nobody is in', notClear: 'Somebody is in', wish: 'Beside safety', fewer: 'Few goes', cheapest: 'Least cost of products',
  working: 'Working it out\u2026', unreachable: 'The server cannot be reached, and a plan is not worked out without it. Trying again by itself.', wrong: 'The server does not take these figures:',
  bands: 'The water against its bands', figure: 'Figure', now: 'Now', band: 'Band', then: 'After the plan', practice: 'common practice', from: (source: string) => `by ${source}`,
  standing: { unknown: '', not_tested: 'not tested', inside: 'inside', within_uncertainty: 'within the test\u2019s uncertainty: repeat first', below: 'below', above: 'above' },
  figures: { ph: 'pH', total_alkalinity: 'Total alkalinity', calcium_hardness: 'Calcium hardness', free_chlorine: 'Free chlorine', cyanuric_acid: 'Cyanuric acid', dissolved_solids: 'Dissolved solids', saturation_index: 'Saturation index' },
  atLeast: (v: string) => `at least ${v}`, atMost: (v: string) => `at most ${v}`, between: (a: string, b: string) => `${a} to ${b}`, plusMinus: (v: string) => `\u00b1 ${v}`,
  steps: 'Steps', tickHint: 'The ticks stay on this page only. What was given goes into the record on the', dosePage: 'dose page', done: (what: string) => `Done: ${what}`,
  part: (k: number, n: number) => n > 1 ? `go ${k} of ${n}` : '', strength: (v: string, age: string) => `${v} % by weight, ${age}`, ageDays: (d: number) => d === 0 ? 'known since today' : `known for ${d} d`, ageUnknown: 'age not known',
  aerate: 'Let carbon dioxide out', letChlorineFall: 'Let free chlorine fall', dilute: 'Fresh water first', dilution: (percent: string, drain: string, overflow: string) => `Replace ${percent} % of the water: drain ${drain} and fill up, or run in ${overflow} while it overflows.`,
  wait: (h: string) => `Then ${h} h of circulation, and test`, waitTest: 'Go by the test', predicted: 'Predicted', care: 'What to wear and how to handle it', volume: (v: string) => `Water of the circuit: ${v}`,
  cost: (v: string) => `Products cost about ${v} in the plant\u2019s money`, mass: (v: string) => `${v} of products in all; cost not counted, for want of prices`, says: 'To know', refused: 'Before there is a plan', leftOut: 'Left out', always: 'Always',
  fill: 'The fill water', fillLead: 'Needed only where products alone cannot do it.', askFill: 'Plan with this fill water', notNumber: 'Not a number. Digits with one comma or point.',
};
