// The page of a probe: which to believe, and what to do now.
import type { Believe } from '../../contract.probe';

export const probePage = {
  whom: { neither: 'Believe neither alone', probe: 'Believe the probe', tests: 'Believe the tests', either: 'They agree' } as Record<Believe, string>,
  believed: 'Believed', shows: 'Probe shows', lastTest: 'Last test', expected: 'Expected', noTest: 'no test yet', notBelieved: 'not known yet', orpAsRead: 'as it is read',
  testDoubted: 'in doubt', doNow: 'What to do now', doNext: 'To do', then: 'then', calibrate: 'Calibrate', toDecision: 'To the decision', writeFault: 'Write a fault note', enter: 'Enter a check',
  kept: 'The server does not answer: this is the last that arrived.',
  restsOn: (n: number) => (n === 1 ? 'Rests on 1 check, sampled' : `Rests on ${n} checks, the newest sampled`),
  drift: 'Drift', aMonth: 'a month', sensitivity: 'Sensitivity', testsOff: 'Tests off together', figures: 'Figures',
  bias: {
    title: 'How far off it is, over time', now: 'now', maintenance: 'maintenance', out: 'out of specification', reads: 'reads high', readsLow: 'reads low',
    legend: '\u25cf after a check, with its interval (k = 2) \u00b7 \u25c7 check set aside \u00b7 \u25bc work or calibration \u00b7 \u2504 drawn on from now.',
    label: (v: string, u: string, at: string) => `Bias over time. At the last check ${v} \u00b1 ${u}; the limit of maintenance is ${at}.`,
    nowIs: (v: string, u: string, unit: string) => `Now ${v} \u00b1 ${u}${unit}.`,
    driftIs: (v: string, u: string, unit: string) => `It moves by ${v} \u00b1 ${u}${unit} a month.`,
    earliest: (limit: string, day: string) => `The limit of ${limit} may be reached from ${day}.`,
    perhaps: (limit: string) => `The limit of ${limit} lies at the edge of what the checks can tell (k = 2).`,
    likely: (day: string, latest: string | null) => latest ? `Likely on ${day}, by ${latest} at the latest.` : `Likely on ${day}.`,
    reached: (limit: string) => `The limit of ${limit} is reached.`,
    all: 'All', days: (n: number) => `${n} days`, range: 'Time shown',
  },
  verdicts: {
    title: 'What the checks said', since: 'Taken in since: a repeat confirmed it.', nowDoubted: 'Set aside as things stand now.', older: 'Show older checks', loading: 'Fetching\u2026',
    failed: 'The older checks cannot be fetched.', none: 'No check yet. The first one to compare says more than any reading.',
  },
  agreement: {
    title: 'Probe against tests', few: 'Three tests to compare are needed before agreement can be told.',
    says: (n: number, bias: string, low: string, high: string, unit: string) => `Over ${n} tests the mean difference, probe less test, is ${bias}${unit}; 19 of 20 differences lie between ${low} and ${high}${unit}.`,
    together: 'The tests of one instrument and lot may all be off together. The bias above allows for that; these two pictures do not.',
    difference: 'Difference against mean', regression: 'Probe against test', failed: 'The picture cannot be fetched.', png: 'as PNG', svg: 'as SVG',
  },
  learned: {
    title: 'This pool\u2019s own line', silent: 'Silent until it has learned enough: nothing is judged by it yet.', speaks: 'It has learned enough to judge by.',
    checks: 'Checks learned from', of: (n: number, needed: number) => `${n} of at least ${needed}`, days: 'Spread over', ofDays: (d: string, needed: string) => `${d} of at least ${needed} d`,
    since: (day: string) => `It began anew on ${day}, after work on the probe; what was learned before no longer counts.`,
    anew: 'It began anew; what was learned before no longer counts.',
    level: (hocl: string) => `At ${hocl} mg/L of hypochlorous acid`, slope: 'For ten times as much',
    own: 'This line is this pool\u2019s and this electrode\u2019s alone. It never turns millivolts into mg/L.',
  },
  signal: {
    title: 'What the signal says by itself', good: 'Nothing speaks against the signal.', unknown: 'Not heard for long enough to say.', response: 'Response (time constant)', minutes: 'min',
    healthy: 'not slow, or not known', wanders: 'Usually wanders within 2 h', notYet: 'not known yet', spikes: 'Spikes of late', leapt: 'Last leap', flow: 'Last without flow', never: 'never seen',
    lag: 'Arrives after its own time', same: 'Unchanged for',
  },
  strips: { shaded: 'hatched: no flow', event: '\u25bc calibration or work', doubted: '\u25c7 test set aside' },
};
