/** Sheets for paper, and the view for an inspector. */
export const paper = {
  title: 'Sheets', lead: 'Sheets to print, to file or to hand over. Each says who printed it, of which record, and shows corrections as corrections.',
  kind: 'Sheet', kinds: { 'day-log': 'Day log sheet', month: 'Month record', calibration: 'Probe calibration record', 'alarms-and-jobs': 'Alarms and maintenance', inspection: 'Record for inspection' } as Record<string, string>,
  says: {
    'day-log': 'Tests in the order of time with missed rounds, probes beside them, limits, doses, exceptions, alarms, work, people, signatures.',
    month: 'A line a day with least, mean and most, exceptions, laboratory, how much of it the probes were there.',
    calibration: 'What was done on each probe, in which solutions, what was corrected in its record, and what each day of it is worth.',
    'alarms-and-jobs': 'Alarms by rule and each one, exceptions, jobs and planned work.',
    inspection: 'What was tested and read first, exceptions with their closing, corrections, people; what is worked out comes last.',
  } as Record<string, string>,
  pools: 'Pools', day: 'Day', to: 'Up to and with', month: 'Month', name: 'Printed by', needName: 'Say who prints it', needPool: 'Choose a pool', needDay: 'Choose a day', needMonth: 'Give the month as year and number, such as 2026-03', order: 'The last day lies before the first',
  clock: (zone: string) => `Days are those of ${zone}.`, open: 'Open to read or print', file: (ending: string) => ending.toUpperCase(),
  inspect: 'For an inspection', inspectLead: 'In two steps: which pools and days, then what the record says of them. What was tested and read comes first, what is worked out last.', toInspect: 'For an inspection, in two steps', stepOne: 'Which pools and days', fromDay: 'From', looks: 'Who looks', show: 'Show the record', back: 'Other pools or days',
};
