// Laboratory results, and the health of the alarms.

export const laboratory = {
  title: 'Laboratory',
  lead: 'What only a laboratory can see. Good chemistry does not answer a finding: a newer sample inside its limit does, or a person entitled, with a reason. Local code and the health authority come first.',
  none: 'No result entered yet.', inForce: 'Limits in force', noLimits: 'No limits in force: nothing is called normal.', planned: (days: string) => `sample every ${days} days`, notPlanned: 'no samples planned',
  due: (at: string) => `next sample due ${at}`, resample: (at: string) => `resample due ${at}`,
  verdict: { no_limit: 'no limit in force', inside: 'inside', not_proven: 'not proven', outside: 'outside' },
  open: 'Stands open: outside its limit', closed: (by: string, at: string) => `closed by ${by}, ${at}`, corrected: 'corrected by a later entry',
  sampled: 'Sampled', reported: 'Reported', by: 'entered by', number: 'Sample', water: 'Chemistry at sampling', noWater: 'No test of the day before and no believed probe at that time.', probe: 'probe', test: 'test',
  limit: (v: string, ml: string) => `limit ${v} in ${ml} mL`, per: (v: string, ml: string) => `${v} in ${ml} mL`, nd: 'not detected',
  enter: 'Enter a report', pool: 'Pool', point: 'Taken at', points: { pool: 'Pool', balance_tank: 'Balance tank', outlet: 'Lowest point or outlet', cell: 'Sample cell', unknown: 'Not stated' } as Record<string, string>,
  place: 'Place in words', lab: 'Laboratory', sampleNumber: 'Sample number', counts: 'Counts as printed', organism: 'Organism', colonyCount: 'Colony count, 36\u00a0\u00b0C', legionella: 'Legionella', count: 'Count', volume: 'in', senses: { counted: '=', below: '<', above: '>', not_detected: 'none' },
  note: 'Remark', save: 'Save the report', needNumber: 'Give the count as it is printed', needOne: 'Enter at least one count', needPool: 'Choose the pool', needTime: 'Say when', need: 'Needed',
  close: 'Close this result', closeLead: 'Only for a result that was no finding, or that the health authority has settled. A duty manager, engineer or administrator of the plant file signs with name and reason.', why: 'Why it may be closed', closeNow: 'Close it',
  sampling: 'Taking the sample', facts: [
    'Sterile bottle with sodium thiosulfate, so that chlorine stops working in the bottle (common practice; ISO 19458, from memory). Never rinse it.',
    'Test free chlorine and pH at the same place and time, and enter them as a check: they stand beside the count.',
    'Cool and dark, 2 to 8 \u00b0C, and to the laboratory within the day (common practice; ISO 19458, from memory). Ask your laboratory for its own times.',
    'Note place and time on the bottle. A resample is taken at the same point.',
  ],
};

export const alarmHealth = {
  month: 'Month', people: 'People on duty at a time', print: 'Print',
  lead: (told: string, hour: string) => `${told} calls; ${hour} an hour and person.`, observed: (from: string, to: string) => `Observed from ${from} to ${to}; means are over that time.`,
  note: 'Counted is what calls somebody: raised, told anew, or off the shelf while it stands. What is shelved, suppressed, out of service or under its cause calls nobody.',
  figure: 'Figure', here: 'Here', target: 'Guidance', known: 'Known from', provenance: { '': '', published: 'published', secondary: 'secondhand', from_memory: 'memory' } as Record<string, string>,
  meets: 'meets it', not: 'does not', source: 'Guidance: ISA-18.2, IEC 62682 and EEMUA 191; the documents themselves were not seen.',
  days: 'Calls by day', daysSaid: (most: string) => `Bars by day, ${most} at most`, busiest: 'The ten busiest', none: 'None.', share: 'Part', times: 'Calls', chattering: 'Chattering', stale: 'Stood over a day', floods: 'Floods', until: 'to',
};
