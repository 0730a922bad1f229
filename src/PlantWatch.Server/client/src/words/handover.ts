/** The page that one shift hands to the next. */
export const handover = {
  title: 'Handover', lead: 'What whoever comes in must know, as it stands now. Read it together, at the plant.', last: (h: number) => `The last ${h} hours`, span: 'Look back', hours: (h: number) => `${h} hours`,
  pools: 'Pools', run: 'run as', alarms: 'Alarms that stand', noAlarms: 'No alarm stands.', aside: 'Put away: shelved, out of service, suppressed', noAside: 'Nothing is put away.', until: 'until',
  jobs: 'Work that is not finished', noJobs: 'No job is open.', due: 'Due', noDue: 'No check and no planned work is due in the next day.', check: 'Check', overdue: 'overdue', dueAt: 'due',
  happened: 'What happened', quiet: 'Nothing was written in this time.', print: 'Print', incidents: 'Incidents that are open', kinds: { alarm: 'Alarm', check: 'Check', job: 'Job', pool: 'Pool' },
  tested: (by: string, what: string) => `${what}, by ${by}`, sign: 'Name of who leaves, name of who comes, time:',
};
