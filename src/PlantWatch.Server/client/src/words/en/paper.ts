/** Sheets for paper. */
export const paper = {
  title: 'Paper', lead: 'Sheets to print, to file or to hand over. Each says who printed it, of which record, and shows corrections as corrections.',
  kind: 'Sheet', kinds: { 'day-log': 'Day log sheet' } as Record<string, string>,
  says: { 'day-log': 'Tests in the order of time with missed rounds, probes beside them, limits, doses, exceptions, alarms, work, people, signatures.' } as Record<string, string>,
  pools: 'Pools', day: 'Day', to: 'Up to and with', month: 'Month', name: 'Printed by', needName: 'Say who prints it', needPool: 'Choose a pool', needDay: 'Choose a day', order: 'The last day lies before the first',
  clock: (zone: string) => `Days are those of ${zone}.`, open: 'Open to read or print', file: (ending: string) => ending.toUpperCase(),
};
