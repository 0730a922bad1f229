// Chemicals: what there is, how long it lasts, what came and what it cost.
import type { StockAct, StockUnit } from '../../contract.stock';

const days = (a: string) => (a === '1' ? '1 day' : `${a} days`);

export const chemicals = {
  title: 'Chemicals', none: 'The plant file names no products (docs/plant-file.md, products).',
  units: { unknown: '', litre: 'L', kilogram: 'kg' } as Record<StockUnit, string>,
  acts: { unknown: '', delivered: 'Delivered', refilled: 'Refilled', counted: 'Counted' } as Record<StockAct, string>,
  lasts: (a: string, b: string) => (a !== b ? `lasts ${a} to ${days(b)}` : a === '0' ? 'lasts less than a day' : `lasts ${days(a)}`), lastsLonger: (a: string) => (a === '0' ? 'may last less than a day' : `lasts ${days(a)} at least`), overYear: 'lasts more than a year', overYearShort: 'a year',
  lastsHint: (n: number, weekday: boolean) => `Right four times in five; from ${n} days of use${weekday ? ', weekdays told apart' : ''}.`, usual: (a: string) => (a === '0' ? 'less than a day by the usual use' : `${days(a)} by the usual use`),
  empty: 'used up', perDay: (a: string) => `${a} a day`, use: 'Use', store: 'Store', storeNever: 'never counted', storeBelow: 'The book shows less than zero: more was taken than was written down. Count the store.',
  tankOf: (name: string) => `Tank of ${name}`, noLevel: 'no level, never filled by the book', strength: (p: string) => `${p} % today`, batch: (b: string) => `batch ${b}`, plan: (p: string) => `${p} % by the plant file`,
  order: 'order now', orderHint: (a: string) => `An order takes ${days(a)}.`, wrong: 'wrong product', nobody: 'Filled, and nobody wrote down what with:',
  cost: (days: number) => `Cost of ${days === 1 ? 'the last day' : `the last ${days} days`}`, noPrice: 'no price known', unpriced: (a: string) => `${a} had no price and is not in it.`,
  perBather: 'A bather', perCubicMetre: 'A m\u00b3 of water and day', noBathers: 'no bathers counted', price: (a: string) => `${a} a unit`,
  bare: 'Never counted', bareHint: 'Of these nobody has written down anything yet. Begin with a count of what is there.',
  plot: (name: string) => `${name}: use by day`, plotTable: 'As a table', day: 'Day', amount: 'Amount', costColumn: 'Cost', part: 'known in part', noUse: 'No use is known yet: it begins with a tank level, a pump\u2019s rate or a dose that is written down.',
  tooClose: 'Stored too close', months: 'What a month used and cost', month: 'Month', product: 'Product', noMonths: 'Nothing was used yet.', soFar: 'so far', total: 'Total',
  write: 'Write down', open: { delivered: 'A delivery', refilled: 'A refill of a tank', counted: 'A count', bathers: 'Bathers of a day' },
  heads: { unknown: '', delivered: 'A delivery', refilled: 'From the store into a tank', counted: 'A count' } as Record<StockAct, string>,
  aloud: 'Two people. Read the label and the name on the tank aloud, and compare, before anything is connected. Acid into hypochlorite gives chlorine gas.',
  countHint: 'What is really there. The book is put right by the difference; nothing before it is changed.',
  productLabel: 'Product, by its label', where: 'Where it goes', whereCounted: 'Counted where', inStore: 'Into the store', ofStore: 'The store', tankFor: (name: string, product: string) => `Tank of ${name} (for ${product})`,
  amountLabel: (unit: string) => `Amount, ${unit}`, containers: 'Containers', strengthLabel: 'Strength on the label, %', batchLabel: 'Batch', madeOn: 'Made on', priceLabel: 'Price of all of it', more: 'Label and price', when: 'When',
  received: 'Received by', filled: 'Filled by', counted: 'Counted by', checked: 'Label and tank read by', checkedHint: 'Somebody else.', note: 'Remark', save: 'Write it down', cancel: 'Leave it',
  stop: (product: string, tank: string, holds: string) => `STOP. ${product} is not for the tank of ${tank}: that one is for ${holds}. Connect nothing. If nothing has gone in, choose the right tank.`,
  wentIn: 'It has gone in. Record it and raise the alarm', wentInNeed: 'Choose the right tank, or say that it has gone in.', wentInFirst: 'Leave the room first. Warn everybody, call the emergency services as local rules say, ventilate only from outside, do not start the pump. This can be written down from outside.',
  needProduct: 'Choose the product by its label.', needWhere: 'Choose where it goes.', needAmount: 'A number, how much.', needNumber: 'A number.', needWhole: 'A whole number.', needDay: 'A day.', needTime: 'Give a date and a time.', needChecked: 'Say who read label and tank with you.', needOther: 'Somebody else than who received it.',
  kept: { unknown: '', delivered: 'The delivery is written down.', refilled: 'The refill is written down.', counted: 'The count is written down.' } as Record<StockAct, string>,
  moves: 'Deliveries, refills and counts', noMoves: 'Nothing is written down yet. Begin with a count of what is there.', into: (place: string) => `into the tank of ${place}`, intoStore: 'into the store', inTank: (place: string) => `in the tank of ${place}`, inStoreCount: 'in the store',
  book: (a: string) => `the book said ${a}`, two: (a: string, b: string) => (b ? `${a}, read with ${b}` : a), corrected: 'corrected by a later row', correction: (why: string) => `takes the place of an earlier row: ${why}`, containersSaid: (n: number) => (n === 1 ? '1 container' : `${n} containers`),
  bathersHead: 'Bathers of a day', bathersHint: 'From the till or the count at the door. A later row for the same day takes the place of this one.', pool: 'Pool', number: 'How many', saidBy: 'Said by', bathersKept: (n: number, pool: string) => `${n} bathers in ${pool} are written down.`, bathersList: 'Bathers', bathersNone: 'No day was counted yet.',
  handover: 'Chemicals that run out', handoverNone: 'Nothing runs out within a week.', handoverLeft: (a: string) => (a === '0' ? 'may be used up within a day' : `may be used up in ${days(a)}`),
};
