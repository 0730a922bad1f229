// Words of the pages that do not come from the server; the subjects of the water have files of their own beside this one.
import type {
  AlarmChange, AlarmState, CalibrationKind, CalibrationStatus, Measurand, PoolWord, Priority, PumpActivity, SamplePoint, Standing, TestMethod,
  Tier, Verdict,
} from '../../contract';
import { inText } from './inText';

const measurand: Record<Measurand, string> = {
  none: '', ph: 'pH', orp: 'ORP', temperature: 'Temperature', conductivity: 'Conductivity', free_chlorine: 'Free chlorine',
  total_chlorine: 'Total chlorine', combined_chlorine: 'Combined chlorine', total_alkalinity: 'Total alkalinity',
  calcium_hardness: 'Calcium hardness', cyanuric_acid: 'Cyanuric acid', dissolved_solids: 'Dissolved solids', sample_flow: 'Sample flow', circulation_flow: 'Circulation', filter_pressure: 'Filter pressure', turbidity: 'Turbidity', bromine: 'Total bromine',
};
const pool: Record<PoolWord, string> = {
  unknown: 'Unknown', normal: 'Normal', due: 'Check due', attention: 'Attention', alarm: 'Alarm', stop: 'Stop',
};
const standing: Record<Standing, string> = {
  unknown: 'No evidence yet', good: 'Good', maintenance_required: 'Maintenance required', out_of_specification: 'Out of specification',
  check_function: 'Check function', failure: 'Failure',
};
const standingShort: Record<Standing, string> = {
  unknown: 'no evidence', good: 'good', maintenance_required: 'maintenance', out_of_specification: 'out of spec',
  check_function: 'check function', failure: 'failure',
};
const verdict: Record<Verdict, string> = {
  not_comparable: 'Cannot be compared', agrees: 'Agrees', probe_drifts: 'The probe drifts', check_suspect: 'The test stands alone: repeat it',
  learning: 'Still learning',
};
const priority: Record<Priority, string> = { note: 'Note', low: 'Low', medium: 'Medium', high: 'High', critical: 'Critical' };
const alarmState: Record<AlarmState, string> = {
  normal: 'Normal', unacknowledged: 'Active, not acknowledged', acknowledged: 'Active, acknowledged',
  returned_unacknowledged: 'Gone, not acknowledged', latched_unacknowledged: 'Latched, not acknowledged',
  latched_acknowledged: 'Latched, acknowledged', shelved: 'Shelved', suppressed_by_design: 'Suppressed by design', out_of_service: 'Out of service',
};
/** What an alarm may be about beside a measurand: two tests together, or what a laboratory counts. */
const watched: Record<string, string> = {
  combined_per_free: 'combined per free chlorine', combined_per_total: 'combined per total chlorine', cyanurate_per_free: 'cyanuric acid per free chlorine',
  colony_count: 'colony count', escherichia_coli: 'E. coli', pseudomonas_aeruginosa: 'Pseudomonas aeruginosa', legionella: 'Legionella',
};
const alarmChange: Record<AlarmChange, string> = {
  none: '', raised: 'Raised', cleared: 'Cleared', acknowledged: 'Acknowledged', shelved: 'Shelved', unshelved: 'Off the shelf',
  suppressed: 'Suppressed by design', released: 'Released', reset: 'Reset', retired: 'Retired',
  taken_out_of_service: 'Taken out of service', returned_to_service: 'Returned to service', re_alarmed: 'Still standing, spoke again', made_safe: 'Recorded as made safe',
};
const pump: Record<PumpActivity, string> = { unknown: 'Not heard yet', stopped: 'Stopped', running: 'Running', fault: 'Fault' };
const method: Record<TestMethod, string> = {
  unknown: 'not stated', photometer: 'photometer', comparator: 'comparator', tablet_count: 'tablet count', meter: 'meter',
};
const point: Record<SamplePoint, string> = {
  unknown: 'Not stated', pool: 'In the pool', cell: 'Outlet of the sample cell', balance_tank: 'Balance tank', outlet: 'Lowest point or outlet of the pool',
};
const calibrationKind: Record<CalibrationKind, string> = {
  offset: 'Offset', two_point: 'Two-point slope', panel_adjustment: 'Adjustment of the plant\u2019s panel',
  verification: 'Looked at, left as it was',
};
const calibrationStatus: Record<CalibrationStatus, string> = {
  proposed: 'Proposed', approved: 'Approved', rejected: 'Rejected', adjusted: 'Done on the panel',
};
const tier: Record<Tier, string> = {
  raw: 'single readings', minute: '1 minute', quarter_hour: '15 minutes', hour: '1 hour', day: '1 day',
};
const kinds: Record<string, string> = {
  swimming: 'swimming', teaching: 'teaching', leisure: 'leisure', therapy: 'hydrotherapy', spa: 'spa', plunge: 'plunge', paddling: 'paddling',
  indoor: 'indoor', outdoor: 'outdoor', chlorine: 'chlorine', stabilised_chlorine: 'stabilised chlorine', salt_electrolysis: 'salt electrolysis',
  bromine: 'bromine', uv: 'UV', ozone: 'ozone',
};
const balance: Record<string, string> = { corrosive: 'corrosive', balanced: 'balanced', scale_forming: 'scale-forming' };

export const frame = {
  measurand, watched, pool, standing, standingShort, verdict, priority, alarmState, alarmChange, pump, method, point, calibrationKind,
  calibrationStatus, tier, kinds, balance, inText, quoted: (text: string) => `\u201c${text}\u201d`,
  product: 'PlantWatch',
  ago: (age: string) => `${age} ago`,
  flow: 'flow', noFlow: 'no flow',
  below: (v: string) => `below ${v}`, above: (v: string) => `above ${v}`,
  justNow: 'now',
  never: 'never',
  nav: { overview: 'Pools', check: 'Check', alarms: 'Alarms', pumps: 'Pumps', record: 'Record', skip: 'Skip to content', label: 'Pages' },
  theme: { label: 'Light or dark', auto: 'Auto', light: 'Light', dark: 'Dark' },
  live: {
    live: 'Live', connecting: 'Connecting', not: 'Not live',
    banner: 'Not live', since: (clock: string) => `since ${clock}.`, silentFor: (age: string) => `(${age})`,
    first: 'No answer from the server yet. Trying again by itself.', values: 'What you see is the last that arrived. Trying again by itself.',
    plantFile: 'The newest plant file was not taken; the one before it is in force.',
    last: (state: string) => `last: ${state}`,
  },
  bar: {
    more: (n: number): string => `${n} more`, nothing: 'Nothing is watched',
    none: 'No alarm', noneThen: 'No alarm when last heard', noneButUnknown: (n: number) => n === 1 ? 'No alarm, but one pool is unknown' : `No alarm, but ${n} pools are unknown`, label: 'Alarms', allSeen: 'All acknowledged', unknown: 'Alarms unknown',
    dead: 'Not live', outOfService: (n: number) => `${n} out of service`,
    state: {
      normal: '', unacknowledged: 'new', acknowledged: 'seen', returned_unacknowledged: 'gone', latched_unacknowledged: 'latched', latched_acknowledged: 'latched',
      shelved: 'shelved', suppressed_by_design: 'suppressed', out_of_service: 'out of service',
    } satisfies Record<AlarmState, string>,
    title: { dead: (own: string) => `Not live \u00b7 ${own}`, calls: (n: number, own: string) => `(${n}) \u25b2 ${own}` },
  },
  overview: {
    title: 'Pools', empty: 'No plant file is in force yet, so there is no pool to show.', begin: 'Begin with the first steps', waiting: 'Waiting for the server.',
    noState: 'Nothing heard of this pool yet.', check: 'Enter a check', open: 'Open pool', tests: 'Last tests', balance: 'Saturation index',
    noTest: 'not tested yet', due: 'Due', overdue: 'Overdue', dueAt: (what: string, clock: string) => `${what} at ${clock}`, more: (n: number) => `and ${n} more`,
    suspect: 'in doubt', notVisible: 'Bottom not visible at the last look', shared: 'Shared water of the circuit', last: 'last 3 hours',
    noLimits: 'No limits are in force, so nothing can be called normal.', allWell: 'In limits, probes trusted, nothing due.', alarmsStand: (n: number): string => (n === 1 ? '1 alarm stands' : `${n} alarms stand`), alarmsGone: (_n: number): string => 'gone, not acknowledged', alarmsWord: (n: number): string => (n === 1 ? 'alarm' : 'alarms'), limit: 'limits', silent: 'silent', doubted: 'in doubt', believed: (v: string, u: string) => `believed ${v}\u00a0\u00b1\u00a0${u}`, noReading: 'no reading yet',
  },
  check: {
    title: 'Manual check', pool: 'Pool', who: 'Who tested', when: 'Sample taken at', now: 'Now', siteClock: 'on the site\u2019s clock',
    point: 'Sample point', place: 'Exact place', placeHint: 'for example: deep end, left, 30 cm deep',
    results: 'Disinfectant, pH, temperature', bromineHint: 'As Br\u2082. What a chlorine programme shows, times 2.25, is bromine.', balance: 'Balance tests', panel: 'What the panel shows', panelHint: 'Read it at the moment of the sample.', panelAsked: 'The pumps obey this number. Read it at the moment of the sample.', panelOthers: 'Other numbers on the panel',
    receivedNow: (v: string) => `Received now ${v}`, testedNow: (v: string) => `test ${v}`, panelDiffers: 'This is not the number that is received: look at its scaling, its unit, or which probe it is.',
    around: 'Around the pool', method: 'Method', bound: 'Value or bound', equals: '=', below: '< below range', above: '> above range',
    dilution: 'Dilution', dilutionHint: 'Diluted one part in', result: (v: string) => `result ${v}`, combined: 'Combined chlorine',
    combinedMissing: 'shows as soon as free and total are both typed', freeAboveTotal: 'Free stands above total. One of the two is wrong: repeat the test.',
    bottom: 'Bottom visible', yes: 'Yes', no: 'No', notLooked: 'Not looked', bathers: 'Bathers in the water', note: 'Note', submit: 'Save the check',
    sending: 'Saving\u2026', another: 'Enter another check', clear: 'Clear the form', clearSure: 'Clear all that was typed?', kept: 'Draft kept on this device.',
    notNumber: 'Not a number. Digits with one comma or point.', negative: 'Cannot be negative.', whole: 'A whole number, please.', needWho: 'Say who tested.', needPool: 'Choose the pool.',
    needTime: 'Give a date and a time.', future: 'This lies in the future.', needSomething: 'Type at least one result or observation.',
    phRange: 'pH lies between 0 and 14.', dilutionLow: 'One or more.', mend: (n: number) => n === 1 ? 'One field needs mending.' : `${n} fields need mending.`,
    noPools: 'The pools of the plant are not known on this device yet. Connect once, then the form also works without signal.',
    storageFull: 'This browser cannot keep the check. It stays in the form; try again when the server can be reached.',
  },
  answer: {
    saved: 'Check saved', panel: 'Panel', believed: 'Believed', probe: 'Probe', test: 'Test', expected: 'Expected', difference: 'Difference', noProbes: 'No probe to compare with this check.', remarks: 'Worth a second look', inDoubt: 'from a test in doubt', notJudged: 'Nothing has been judged yet: until then what you measured counts, and the plant\u2019s own instructions.',
    queued: 'Kept on this device', queuedMore: 'The server cannot be reached. The check goes out by itself as soon as it can be.', arrived: 'Sent since then.',
    refused: 'The server refused this check', refusedMore: 'Mend the marked fields and save again. Nothing was lost.',
    refusedBare: 'The server refused it without naming a field.',
  },
  outbox: {
    title: 'On this device', waiting: 'waiting to be sent', refused: 'Refused', edit: 'Open in the form', drop: 'Discard', dropSure: 'Discard this check for good?',
    sendNow: 'Try now', keepsTime: (time: string) => `It keeps its time: ${time}.`, timeNow: 'Give it the time now', badge: (n: number) => `${n} waiting`,
  },
  strips: {
    gap: 'no reading', partFlow: (percent: string) => `flow for ${percent} % of the time`, corrected: 'corrected', raw: 'raw', test: 'test', expected: 'expected from the test', failed: 'The readings cannot be fetched.', empty: 'No readings in this time.',
    tier: (t: string) => `mean and spread of ${t}`, against: (e: string) => `against ${e}`, noTests: 'No tests in this time.', testsOnly: 'tests', now: 'Now',
    range: 'Time shown', earlier: 'Earlier', later: 'Later', closer: 'Zoom in', wider: 'Zoom out', label: 'Trends',
    spans: { hour: 'Hour', six_hours: '6 h', day: 'Day', week: 'Week', month: 'Month', year: 'Year', five_years: '5 years' },
    legend: '\u25c6 test with its uncertainty \u00b7 \u2504 raw beside \u2501 corrected \u00b7 shaded: limits.',
    touch: 'Drag to move, pinch to zoom.', keys: 'Wheel (after a click) zooms too; keys: arrows, Page up and down, + and \u2212; the Home key goes to now.',
  },
  poolPage: {
    balance: 'Water balance', hocl: 'Free chlorine present as HOCl',
    manual: 'Last tests', measurand: 'What', value: 'Value', method: 'Method', age: 'Age', probes: 'Probes', standing: 'Standing', bias: 'Bias', believed: 'Believed', panel: 'Panel',
    testColumn: 'Test', expectedColumn: 'Expected', reads: 'Reads', pumps: 'Dosing pumps', due: 'Due', nothingDue: 'Nothing is due.', alarms: 'Open alarms', noAlarms: 'No open alarm.', checks: 'Checks of the last 14 days', noChecks: 'No checks in the last 14 days.',
    bathers: 'Bathers', bottom: 'Bottom', visible: 'visible', notVisible: 'not visible', origin: { raw: 'own signal', panel_scaled: 'as the panel shows it' }, noProbes: 'This pool has no probe.', noPumps: 'No dosing pump.',
    common: 'common return', volume: (v: string) => `${v} m\u00b3`, noTests: 'Nothing was tested yet.', turnover: (h: string) => `turnover ${h} h`,
  },
  alarms: {
    title: 'Alarms', standing: 'Standing now', none: 'No alarm stands.', cause: 'Cause', consequence: 'If nothing is done', action: 'What to do', time: 'Time to respond', acknowledge: 'Acknowledge', reset: 'Reset', oneShot: 'Only until it clears', shelve: 'Shelve',
    unshelve: 'Take off the shelf', comment: 'Comment', why: 'Reason', needWhy: 'Say why.', shelveFor: 'Shelve for', minutes: (n: number) => `${n} minutes`,
    hours: (n: number) => (n === 1 ? '1 hour' : `${n} hours`), raised: 'Raised', cleared: 'gone', acknowledgedBy: (who: string) => `acknowledged by ${who}`,
    shelvedBy: (who: string, until: string) => `shelved by ${who} until ${until}`, history: 'The last 7 days', noHistory: 'Nothing happened in the last 7 days.',
  },
  pumps: {
    title: 'Pumps', since: 'for', low: 'refill', write: 'Write a job', notes: 'Jobs on pumps and probes', newNote: 'New job',
  },
  record: {
    title: 'Record', sumsTitle: 'Closing sums', explain: 'Everything that arrived is accounted for: received = stored + duplicates + refused + in flight.',
    sums: { received: 'received', stored: 'stored', duplicates: 'duplicates', refused: 'refused', inFlight: 'in flight' },
    closes: 'The sums close.', open: 'The sums do not close: readings are missing or counted twice.',
    identity: (device: string, packet: string, atLeast: string) => `Stored by device time ${device}, by packet ${packet}, at least once ${atLeast}.`,
    messages: (n: string) => `${n} messages.`, circuit: 'Circuit', unclaimed: 'Topics nobody claims', refusals: 'Refused items', noRefusals: 'Nothing was refused.', bytes: (n: string) => `${n} bytes`, noText: '(empty)',
  },
  probe: {
    noBias: 'No check could be compared with this probe yet.', biasLabel: (v: string, u: string) => `Bias over time, now ${v} \u00b1 ${u}`, biasTitle: 'Bias after each check: what it read minus what it should',
    offer: 'Offered from the checks', noOffer: 'No calibration is offered', adjustPanel: (a: string) => `change the panel\u2019s value by ${a}`, shift: (a: string) => `corrected = raw ${a}`, slope: (s: string, a: string) => `corrected = ${s} \u00d7 raw ${a}`,
    restsOn: (n: number) => (n === 1 ? 'Rests on 1 check.' : `Rests on ${n} checks.`), judged: 'judged', raw: 'As read', corrected: 'Corrected', olderChecks: (n: number) => `Show ${n} older`, panelHint: 'The pumps obey the panel, so the panel must be set right; nothing is corrected here as well.',
    rawHint: 'Raw readings are never changed; the correction holds from a time on.', propose: 'Propose it', waiting: 'Waiting for a decision', proposedBy: (who: string, at: string) => `proposed by ${who}, ${at}`,
    engineer: 'Engineer', doneAt: 'Done on the panel at', holdsFrom: 'Holds from', markDone: 'Mark as done on the panel', approve: 'Approve', reject: 'Reject', history: 'Calibrations', noHistory: 'Never calibrated here.',
    decidedBy: (what: string, who: string, at: string) => `${what} by ${who}, ${at}`, range: (r: string) => `range ${r}`, judgements: 'What the checks said', noJudgements: 'No check yet.',
  },
  pageMissing: 'There is no such page.', back: 'Back to the pools', retry: 'Try again', loading: 'Loading\u2026',
  error: { unreachable: 'The server cannot be reached.', kept: 'What you typed is still here; try again.', refused: 'Refused' },
  name: 'Your name', needName: 'Say who you are.', cancel: 'Cancel',
};
