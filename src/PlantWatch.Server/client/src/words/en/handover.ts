/** The page that one shift hands to the next. */
export const handover = {
  title: 'Handover', lead: 'What whoever comes in must know, as it stands now. Read it together, at the plant.', last: (h: number) => `The last ${h} hours`, span: 'Look back', hours: (h: number) => `${h} hours`,
  pools: 'Pools', run: 'run as', alarms: 'Alarms that stand', noAlarms: 'No alarm stands.', aside: 'Put away: shelved, out of service, suppressed', noAside: 'Nothing is put away.', until: 'until',
  jobs: 'Work that is not finished', noJobs: 'No job is open.', due: 'Due', noDue: 'No check and no planned work is due in the next day.', check: 'Check', overdue: 'overdue', dueAt: 'due',
  happened: 'What happened', quiet: 'Nothing was written in this time.', print: 'Print', incidents: 'Incidents that are open', kinds: { alarm: 'Alarm', check: 'Check', job: 'Job', pool: 'Pool' },
  tested: (by: string, what: string) => `${what}, by ${by}`, 
  since: (from: string | null, to: string, at: string) => `Since ${from ? `${from} handed over to ${to}` : `${to} took over`}, ${at}`, neverSigned: 'No handover has been signed yet',
  moves: { new: 'new', changed: 'changed', gone: 'over', same: '', none: '' }, nothingMoved: 'What stood then stands as it stood.', firstLead: 'From the first signature on, this says what is new since then.',
  waits: (from: string) => `${from} has written a handover that nobody has signed`, wrote: (at: string) => `Written ${at}`,
  leave: 'Who leaves writes', leaveHint: 'What no screen knows: what you tried, whom you called, what to watch.', note: 'What who comes must know', leaveName: 'Name of who leaves', saveNote: 'Write the handover', another: 'Another one waits for a signature. It stays in the record as unsigned.', wroteIt: 'Written. It waits for who comes in to sign.',
  come: 'Who comes in signs', comeHint: 'Signing says that you have read what stands and taken over. It changes nothing of the plant.', without: 'Nobody has written a handover; it can be taken over without one, and the record says so.', comeName: 'Name of who comes in', remark: 'To add (may be left empty)', signIt: 'Sign', signedIt: 'Signed.', readAgain: 'Read again',
  lines: (n: number) => n === 1 ? 'The one line that is signed' : `The ${n} lines that are signed`, noLines: 'Nothing stands.', needNote: 'Write what who comes must know.',
  past: 'Handovers before', noPast: 'None yet.', unsigned: 'never signed', waiting: 'waits for a signature', signedBy: (to: string, at: string) => `signed by ${to}, ${at}`, noNote: 'taken over without a note', altered: 'The lines kept are not the ones that were signed.',
  states: { incident: 'Incident', due: 'due', overdue: 'overdue', did_not_help: 'Did not help' } as Record<string, string>, parts: { unknown: '', pool: 'Pool', alarm: 'Alarm', put_away: 'Put away', job: 'Job', task: 'Planned work', check: 'Check' },
  sign: 'Name of who leaves, name of who comes, time:',
};
