// Single doses.

import { inText } from './inText';

export const dose = {
  lead: 'Works out one dose of one product. Advice, never an order: the plant\u2019s own people decide, and local codes and the product\u2019s safety data sheet come first.',
  ask: 'What for', product: 'Product', choose: 'Choose\u2026', noProducts: 'The plant file lists no products.', noUse: 'PlantWatch works out no doses of this product.',
  target: 'To move', raise: (name: string) => `Raise ${inText(name)}`, lower: (name: string) => `Lower ${inText(name)}`, value: 'To', valueOf: (what: string) => `${what} to`, now: (v: string) => `Tested: ${v}`, limits: (low: string, high: string) => `Limits ${low} to ${high}`,
  notTested: 'Not tested', bathers: 'Is the water clear of bathers?', clear: 'Nobody is in', notClear: 'Somebody is in', byPump: 'This product goes in through its doser.',
  closed: 'The pool is closed and stays closed until the retest', notNumber: 'Not a number. Digits with one comma or point.',
  waiting: 'Choose a product and a target.', working: 'Working it out\u2026', unreachable: 'The server cannot be reached, and a dose is not worked out without it. Trying again by itself.',
  refusedTitle: 'No dose', firstGo: 'First go', allAtOnce: 'All in one go', of: (v: string) => `of ${v} in all, by retests`, why: 'Why not all', also: 'that is', u: (v: string) => `What it does is known to about \u00b1 ${v} %`,
  cost: (v: string) => `Cost about ${v}`, strength: 'Strength today', strengthOf: (v: string, chlorine: boolean) => `${v} % by weight${chlorine ? ', as available chlorine' : ''}`,
  age: (days: number) => days === 0 ? 'known since today' : days === 1 ? 'known for 1 day' : `known for ${days} days`, ageUnknown: 'age not known', water: 'Water', firstWater: (v: string) => `reaches ${v} first`,
  retest: 'Retest', retestAt: (hours: string, clock: string) => `after ${hours} h, not before ${clock}`, after: 'After the first go', nowColumn: 'Now', atOnce: 'At once', spent: 'When spent',
  rows: { ph: 'pH', saturation: 'Saturation index', freeChlorine: 'Free chlorine', hypochlorousAcid: 'Hypochlorous acid', alkalinity: 'Total alkalinity', calcium: 'Calcium hardness', cyanurate: 'Cyanuric acid', solids: 'Dissolved solids' },
  closedModel: 'Mixed and closed to the air. The retest decides.', side: 'What it does besides', how: 'Where and in which order', equipment: 'Wear and have at hand', precautions: 'Precautions', says: 'To know',
  given: 'I added this', givenLead: 'Write down what went in, also when it was not what stands here.', amount: 'Amount', unitChoice: 'Unit', when: 'When', note: 'Remark', by: 'Who added it', save: 'Into the record', needBy: 'Who added it?',
  needAmount: 'How much was it? A number above 0.', needWhen: 'When was it?', needProduct: 'Choose the product first.', kept: 'In the record. The retest will be held against it.', keptHere: 'Kept on this device; it goes out as soon as the server can be reached.',
  waitingHere: 'On this device, not yet in the record', refusedHere: 'Refused', drop: 'Discard', dropSure: 'Discard what was typed?',
  list: 'Doses given', none: 'No dose has been entered for this pool.', noRetest: 'No retest yet', retestFrom: (clock: string) => `retest tells from ${clock}`, corrected: 'Corrected by a later entry', corrects: 'Corrects an earlier entry',
  correct: 'Correct', correcting: (what: string) => `Correcting: ${what}`, reason: 'Why it is corrected', needReason: 'Why is it corrected?', words: { unknown: '', as_predicted: 'as predicted', less: 'less than predicted', more: 'more than predicted', other_way: 'the other way', not_comparable: 'not comparable' },
  hold: {
    open: 'An incident is open in this water.', wants: (start: string, highest: string) => `Its plan wants ${start} mg/L of free chlorine through the pool before its clock starts; a dose is worked out here up to ${highest} mg/L.`,
    notClosed: (names: string) => `Not closed: ${names}. Close every pool of this water first.`, toIt: 'To the incident',
  },
  unfit: 'not for this pool', remarks: (n: number) => n === 1 ? '1 remark' : `${n} remarks`,
};
