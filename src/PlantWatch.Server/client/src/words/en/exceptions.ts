// The exceptions: from reading to action to retest to closed.
import type { BreachGrade, Closing, OwedAct, RetestWord, StepKind } from '../../contract.exceptions';

export const exceptions = {
  title: 'Exceptions',
  lead: 'Each breach of a limit or a stop is one line: what was read, what was done, the test after it, and who closed it. Doses, tests, washes and closed pools come in by themselves.',
  open: 'Open', closed: 'Closed', noneOpen: 'Nothing stands open.', noneClosed: 'Nothing was closed in this time.', counted: (n: number) => `${n} closed`,
  pool: 'Pool', all: 'All pools', month: 'Month', anyMonth: 'All months', table: 'As a table (CSV)', older: 'Older', newer: 'Newer', pageOf: (page: number, pages: number) => `Page ${page} of ${pages}`,
  grades: { operating: 'Operating limit', closure: 'Closure limit', stop: 'Stop', laboratory: 'Laboratory limit' } as Record<BreachGrade, string>,
  marks: { reading: 'Reading', action: 'Action', retest: 'Retest', closed: 'Closed' },
  notYet: 'not yet', nothing: 'none', probe: 'probe', minutes: (n: number) => (n < 90 ? `after ${n} min` : n < 2880 ? `after ${Math.floor(n / 60)} h ${String(n % 60).padStart(2, '0')} min` : `after ${Math.floor(n / 1440)} d ${Math.floor((n % 1440) / 60)} h`),
  onDuty: 'The operator on duty',
  owes: { act_and_retest: 'owes an action and a retest', retest: 'owes a retest', settle: 'owes an answer: the test is inside and its alarm still stands', resample: 'owes a resample', incident: 'follows the plan of the incident: its clock runs, and this line\u2019s does not' } as Record<OwedAct, string>,
  by: (at: string) => `by ${at}`, overdue: (span: string) => `overdue by ${span}`, left: (span: string) => `${span} left`,
  test: 'Enter the test', dose: 'Enter a dose', resample: 'Enter the report', say: 'Say what was done',
  sayLead: 'Only what no dose, wash, closed pool or test can tell: a pump primed, fresh water let in, a probe cleaned.', text: 'What was done', when: 'When', save: 'Save', need: 'Say what was done.', needTime: 'Say when.',
  closing: {
    none: '', by_retest: 'by a retest inside', corrected: 'the reading was corrected: there was no breach', by_person: 'by a person entitled', limit_gone: 'what it was held against is no longer in force', pool_gone: 'the pool left the plant file',
    goes_on: 'not over: what closed it was corrected, and it goes on in a line opened since',
  } as Record<Closing, string>,
  withdrawn: 'taken back by a correction', readingWithdrawn: 'The reading was taken back by a correction, and its alarm still asks for a test.', course: (n: number) => `The whole course, ${n} ${n === 1 ? 'step' : 'steps'}`,
  steps: {
    seen: 'seen', words: 'said', dose: 'dosed', pool_closed: 'pool closed', new_water: 'filled anew', filter_washed: 'filter washed', retest: 'tested', reading: 'read again', back_inside: 'probe back inside', reading_corrected: 'reading corrected; it had said:', reopened: 'open again: what closed it was taken back', incident: 'incident', job: 'work on it', calibrated: 'calibrated', incident_over: 'no longer raised on purpose',
  } as Record<StepKind, string>,
  retests: { none: '', inside: 'inside', at_limit: 'at the limit', outside: 'outside', not_proven: 'proves nothing' } as Record<RetestWord, string>,
  ofPool: 'Open exceptions', toAll: 'All exceptions of this pool',
};
