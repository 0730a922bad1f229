// The round through the plant room.
import type { RoundWord } from '../../contract.plantRound';

export const plantRound = {
  title: 'Plant round', lead: 'Once a day through the plant room. What is left empty is left out.', none: 'No circuit is known yet.', circuit: 'Plant room',
  words: { due: 'due today', walked: 'walked today', overdue: 'overdue' } satisfies Record<RoundWord, string>,
  dueAt: (clock: string) => `by ${clock}`, wasDue: (clock: string) => `was due by ${clock}`, walkedBy: (who: string, clock: string) => `walked by ${who}, ${clock}`, never: 'nobody has walked it yet',
  last: (v: string, age: string) => `last ${v}, ${age} ago`, inOrder: 'in order', notInOrder: 'not in order', notLooked: 'not looked', remark: 'What is wrong', limits: (l: string) => `in order: ${l}`, notToday: 'not due for this round',
  who: 'Who walked it', note: 'What else was seen', save: 'Save the round', saved: 'Plant round saved', waiting: 'Kept on this device: it goes out by itself as soon as the server can be reached.', refused: 'The server refused this round', dropSure: 'Discard this round for good?', again: 'Walk another',
  allWell: 'Everything that was read is in order.', needSomething: 'Read at least one thing, or write what was seen.', number: 'Not a number. Digits with one comma or point.', storageFull: 'This device cannot keep it, and the server cannot be reached. Do not close this page.',
  impossible: (low: string, high: string, unit: string) => `A gauge shows ${low} to ${high} ${unit}: read it again.`, meterFar: (more: string, holds: string) => `${more} m\u00b3 more than before, of pools that hold ${holds} m\u00b3: read it again`,
  draft: 'What you typed is kept on this device.', wash: 'Note a filter wash', jobs: 'Write a job', deliveries: 'Deliveries, refills, bathers', meterBack: 'less than before: read it again', asHeard: 'as this device last heard',
};
