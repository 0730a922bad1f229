// What if the limits were others: the question, the run and the answer.
import type { RunState } from '../../contract.whatIfLimits';

const alarms = (n: number) => n === 1 ? '1 alarm' : `${n} alarms`;

export const whatIfLimits = {
  title: 'What if, limits',
  lead: 'The stored history is replayed twice, once with the plant file as it stands and once with the limits you type. Nothing is changed by it, neither the record nor the plant file nor an alarm that stands.',
  loading: 'Asking what is in force.', nothing: 'No pool has a quantity that could be limited.', ask: 'The question', pool: 'Pool', quantity: 'Quantity', low: 'Lowest', high: 'Highest', days: 'Days back from now',
  inForce: 'In force', noLimit: 'no limit', own: 'the plant\u2019s own', row: (id: string) => `row ${id} of the pack`, stop: (low: string, high: string) => `The stop that always holds, ${low} to ${high}, is changed by no limit.`,
  byHand: 'No probe watches this here: only tests by hand are held against it.',
  from: (low: string) => `from ${low}`, upTo: (high: string) => `up to ${high}`, between: (low: string, high: string) => `${low} to ${high}`,
  leaveEmpty: 'Left empty: no own limit at that end.', more: 'Deadband and delays', deadband: 'Deadband', onDelay: 'Outside for, until it is an alarm', offDelay: 'Back inside for, until it clears', usual: (v: string) => `Left empty: ${v}`,
  looser: 'Looser than the pack', looserMeans: 'Only where an engineer or administrator stands for it with a reason. A closure limit is loosened by nobody.', looserBy: 'Who stands for it', looserWhy: 'Why', nobody: 'Nobody among the people of the plant file may.',
  source: 'Document and clause', sourceHint: 'Where the limit is taken from; it goes into the line of the plant file.',
  recordBegins: (at: string) => `The record begins ${at}.`, run: 'Replay', again: 'Ask something else', notNumber: 'A number, such as 7.4', needOne: 'Lowest, highest or both', needDays: (most: string) => `From 1 to ${most} days`,
  state: { waiting: 'Waiting', running: 'Replaying', done: 'Done', cancelled: 'Cancelled', failed: 'Failed' } as Record<RunState, string>,
  ahead: (n: number) => n === 1 ? 'One other comes before it.' : `${n} others come before it.`, cancel: 'Cancel', percent: (p: string) => `${p} %`, gone: 'This run is no longer known: the server keeps the last eight, until it stops.',
  answer: 'The answer',
  sentence: (days: string, lost: number, gained: number) => lost === 0 && gained === 0 ? `Over ${days} days: the same alarms.`
    : `Over ${days} days: ${lost === 0 ? 'no alarm fewer' : `${alarms(lost)} fewer`}, ${gained === 0 ? 'none more' : `${gained} more`}`,
  critical: (n: number) => n === 0 ? 'none that asked for closing was lost' : n === 1 ? '1 that asked for closing was lost' : `${n} that asked for closing were lost`,
  load: (told: string, before: string, hours: string, hoursBefore: string) => told === before && hours === hoursBefore ? 'People would be called as often, and the alarms stand as long.'
    : `People would be called ${told} times instead of ${before}; alarms would stand ${hours} hours in all instead of ${hoursBefore}.`,
  span: (from: string, to: string) => `${from} to ${to}`, asStands: 'As it stands', changed: 'Changed', figure: 'Figure', alarms: 'Alarms', stoodHours: 'Hours that alarms stood, added up', calls: 'Calls to people', perHour: 'Calls an hour',
  byRule: 'By rule', rule: 'Rule', lostShort: 'Lost', gainedShort: 'Gained', lost: 'Lost', gained: 'Gained', lostMeans: 'Come as the plant stands, and at no time with the change.', gainedMeans: 'Come only with the change.',
  none: 'None.', firstOf: (n: number, all: number) => `The first ${n} of ${all}.`, stood: (length: string) => `stood ${length}`, stands: 'still stands at the end', silent: 'called nobody', strip: 'Strips around it', stripOf: (what: string) => `Strips of the pool around: ${what}`,
  minutes: (m: string) => `${m} min`, hours: (h: string) => `${h} h`, priority: 'Priority',
  lines: 'Lines for the plant file', linesMeans: 'PlantWatch never writes the plant file. To bring this into force, a person who may copies the line under the limits of the pool, in place of the one on the same quantity.', under: (pool: string) => `Under limits of ${pool}`, copy: 'Copy', copied: 'Copied',
  sure: 'How sure this is', fidelity: (found: string, recorded: string, more: string) => `Of ${recorded} alarms that the record holds from this time, the replay as it stands finds ${found} again, and ${more} besides.`, took: (readings: string, seconds: string) => `${readings} readings in ${seconds} s.`,
};
