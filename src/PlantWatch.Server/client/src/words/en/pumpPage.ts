// A dosing pump by what the water does.
export const pumpPage = {
  verdict: 'By what the water does', notJudged: 'The water does not judge this pump:', seeFile: 'Rates, strokes and strengths stand in the plant file.',
  waiting: 'Nothing was heard of its water yet.',
  learning: (days: string, wanted: string) => `Learning what this pool usually asks: ${days} of ${wanted} days. Until then only what single samples show is told.`,
  well: 'It does what its strokes say, as far as the water shows.', suspicion: (percent: string) => `The likeliest trouble is likely to ${percent}.`, hardly: 'less than 1\u00a0%',
  since: 'it seems since', missing: (litres: string) => `${litres} missing by now`, unasked: (litres: string) => `${litres} came unasked by now`, certain: (percent: string) => `certainty ${percent}`,
  moved: (expected: string, observed: string) => `pH should have moved by ${expected} and moved by ${observed}`, toAlarm: 'To its alarm', action: 'What to do',
  amounts: 'Amounts', today: 'driven today', limit: (litres: string) => `plausible in a day ${litres}`, over: (span: string) => `driven in ${span}`, fell: (span: string) => `tank fell in ${span}`, unknown: 'not known',
  beside: 'What it was driven to is what its strokes or its running time should deliver; what its tank fell by is what left the tank. Whether it arrived, the water says.',
  jobs: 'Jobs', newJob: 'Write a job', course: 'Course', spans: { 24: '24 hours', 72: '3 days', 168: '7 days' } as Record<number, string>, range: 'Span shown',
  driven: 'Driven', usual: 'usual', seen: 'seen', expected: 'expected', tank: 'Tank', unit: 'L/h', noCourse: 'Nothing is known of this span.',
  legend: 'Solid: what was. Broken: what the pool usually asks of chlorine at that hour, or pH as the strokes should have made it; every eight hours that begins anew from what is seen. Wedge: an alarm or a job.',
  kept: 'The server does not answer: this is how it was.', marks: 'Alarms and jobs in this span', kinds: { alarm: 'Alarm', cleared: 'Cleared', job: 'Job' }, open: 'Open the page of this pump',
};
