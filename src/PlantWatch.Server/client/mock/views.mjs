import { chosen, site, valueAt } from './plant.mjs';
import { balance, noBalance } from './water.mjs';

export const iso = t => new Date(t).toISOString();
const said = (code, text) => ({ code, text });
export const ledger = t => {
  const received = 120_000 + Math.floor((t / 1000) % 100_000);
  return { received, stored: received - 60 - 3 - 2, duplicates: 60, refused: 3, inFlight: 2, storedByDeviceTime: received - 1065, storedByPacket: 900, storedAtLeastOnce: 100, messages: received - 400 };
};

const standings = {
  'main-ph': ['out_of_specification', 'Reads 0.18 \u00b1 0.06 higher than the last 6 tests say', { value: 0.18, u: 0.06 }, 'probe_drifts'],
  'main-orp': ['good', 'Agrees with this pool\u2019s own line within 14 mV', { value: 4, u: 18 }, 'agrees'],
  'main-temp': ['good', 'Agrees with the thermometer', { value: 0.1, u: 0.4 }, 'agrees'],
  'main-cl': ['maintenance_required', 'Slope has fallen to 82 % since the last calibration', { value: -0.12, u: 0.15 }, 'agrees'],
  'learner-ph': ['good', 'Agrees within both uncertainties', { value: 0.02, u: 0.05 }, 'agrees'],
  'learner-orp': ['unknown', 'Learning this pool\u2019s line: 3 of 8 checks', null, 'learning'],
  'learner-temp': ['check_function', 'No flow through the sample cell for 4 minutes', null, 'not_comparable'],
  'hall-flow': ['good', 'Flow', null, 'not_comparable'],
  'spa-ph': ['failure', 'Has not moved by 0.01 in 3 hours', null, 'not_comparable'],
  'spa-orp': ['good', 'Agrees with this pool\u2019s own line', { value: -6, u: 20 }, 'agrees'],
  'spa-cond': ['good', 'Steady', null, 'not_comparable'],
};

// The twins of a large plant, and all of one with nothing wrong, are as they should be.
const fine = id => chosen === 'fine' || /\d/.test(id);

function probeView(p, t, calibrations) {
  const [standing, why, bias, verdict] = fine(p.id) ? ['good', 'Agrees within both uncertainties', { value: 0.01, u: 0.05 }, 'agrees'] : standings[p.id];
  const silent = p.id === 'spa-ph' && !fine(p.id);
  const at = silent ? t - 14 * 60_000 : t - (t % 2000);
  const value = valueAt(p.id, at);
  const held = calibrations.findLast(c => c.probeId === p.id && (c.status === 'approved' || c.status === 'adjusted')) ?? null;
  return {
    id: p.id, at: iso(at), raw: value - (p.id === 'learner-ph' ? 0.08 : 0), value, good: !silent && standing !== 'check_function', stale: silent, standing,
    reasons: [said('mock', why)], bias, believed: bias ? { value: value - bias.value, u: bias.u } : null, verdict, judgedAt: bias ? iso(t - 3.2 * 3_600_000) : null,
    pairs: bias ? 6 : 0, calibration: held,
  };
}

const manual = (measurand, value, u, hours, t, more = {}) =>
  ({ measurand, value, u, censoring: 'none', method: 'photometer', sampledAt: iso(t - hours * 3_600_000), suspect: false, checkId: '0197a000-0000-7000-8000-000000000001', ...more });

const pools = {
  main: t => ({
    state: 'attention', why: [said('a', 'The pH probe reads higher than the tests say'), said('b', 'Combined chlorine 0.62 mg/L is above 0.5 mg/L')],
    manual: [manual('free_chlorine', 1.28, 0.08, 3.2, t), manual('total_chlorine', 1.9, 0.1, 3.2, t), manual('ph', 7.44, 0.06, 3.2, t),
      manual('total_alkalinity', 110, 10, 52, t, { method: 'tablet_count' }), manual('calcium_hardness', 240, 25, 52, t, { method: 'tablet_count' }), manual('dissolved_solids', 1180, 60, 52, t, { method: 'meter' })],
    combined: { value: 0.62, u: 0.13, sampledAt: iso(t - 3.2 * 3_600_000), remark: null },
    balance: balance(0.08, t),
    hoclShare: 0.51, due: [{ poolId: 'main', what: ['free_chlorine', 'total_chlorine', 'ph'], dueAt: iso(t - 40 * 60_000), overdue: true }], bottomVisible: true, bathers: 34,
  }),
  learner: t => ({
    state: 'normal', why: [said('n', 'In limits, probes trusted, nothing due')], manual: [manual('free_chlorine', 1.6, 0.1, 2.5, t), manual('total_chlorine', 1.75, 0.1, 2.5, t)],
    combined: { value: 0.15, u: 0.14, sampledAt: iso(t - 2.5 * 3_600_000), remark: null },
    balance: noBalance('Missing: total alkalinity', 'Missing: calcium hardness'),
    hoclShare: 0.53, due: [], bottomVisible: true, bathers: 12,
  }),
  spa: t => ({
    state: 'stop', why: [said('s', 'ORP is below 650 mV and the last test showed no free chlorine: bathers should not be in the water'), said('s2', 'The pH probe is silent for 14 minutes')],
    manual: [manual('free_chlorine', 0.2, 0.05, 0.6, t, { suspect: true, censoring: 'below' })], combined: null,
    balance: balance(-0.62, t), hoclShare: null, due: [], bottomVisible: false, bathers: 0,
  }),
};

export function circuitView(c, t, version, state) {
  return {
    id: c.id, version, at: iso(t), pools: c.pools.map(p => ({ id: p.id, ...(fine(p.id) ? pools.learner(t) : pools[p.id](t)) })), probes: c.probes.map(p => probeView(p, t, state.calibrations)),
    pumps: c.pumps.map(p => ({
      id: p.id, activity: { 'hypo-pump': 'running', 'acid-pump': 'fault', 'spa-pump': 'unknown' }[p.id], since: p.id === 'spa-pump' ? null : iso(t - 25 * 60_000), heardAt: p.id === 'spa-pump' ? null : iso(t - 9000),
      tankPercent: { 'hypo-pump': 62, 'acid-pump': 9 }[p.id] ?? null, tankAt: iso(t - 60_000), stale: false,
    })),
    alarms: state.alarms.filter(a => a.circuit === c.id).map(({ circuit, ...a }) => ({ ...a, mayLeaveService: a.priority !== 'critical' && a.state !== 'out_of_service', annunciates: ['unacknowledged', 'latched_unacknowledged'].includes(a.state) && !a.consequenceOf })), jobs: state.jobs.filter(f => f.state !== 'done' && c.pumps.some(p => p.id === f.asset)),
    proposals: state.calibrations.filter(k => k.status === 'proposed' && c.probes.some(p => p.id === k.probeId)), ledger: ledger(t),
  };
}

export const entries = t => [
  ['exceptions', 'Main pool', 'pH, the breach is closed: by a retest inside', 'R. Hale', 20, 20], ['filters', 'Filter 1', 'Backwash over, washed', 'J. Marsh', 35, 35], ['exceptions', 'Main pool', 'pH, about the breach: said: acid pump primed, suction line bled', 'J. Marsh', 50, 50],
  ['jobs', 'Main pool, Acid pump', 'Job done: diaphragm replaced', 'J. Marsh', 55, 55], ['tests', 'Main pool', 'Tested: pH 7.90, free chlorine 1.42 mg/L', 'R. Hale', 80, 30], ['reagents', 'Phenol red', 'Lot 27-03 opened, to be used up by 2031-03-31', 'R. Hale', 600, 600],
  ['limits', 'Main hall', 'The plant file came into force', null, 900, 900],
].map(([about, subjectName, text, by, happened, at], i) => ({ id: `0197a000-0000-7000-8000-00000000070${i}`, at: iso(t - at * 60_000), happenedAt: iso(t - happened * 60_000), about, subjectName, text, by }));

const things = site.circuits.flatMap(c => [...c.pools, ...c.probes, ...c.pumps]);

const alarm = (n, circuit, rule, subject, poolId, priority, title, cause, consequence, action, timeToRespond, minutes, t, more = {}) => ({
  circuit, id: `0197a000-0000-7000-8000-0000000001${String(n).padStart(2, '0')}`, rule, subject, subjectName: things.find(x => x.id === subject)?.name ?? subject, poolId, priority, state: 'unacknowledged', active: true, acknowledged: false,
  title, cause, consequence, action, timeToRespond, raisedAt: iso(t - minutes * 60_000), clearedAt: null, acknowledgedBy: null, acknowledgedAt: null, comment: null, shelvedBy: null, shelvedUntil: null, ...more,
});

export const firstAlarms = t => chosen === 'fine' ? [] : [
  alarm(1, 'spa', 'R-002', 'spa', 'spa', 'critical', 'No disinfectant in the spa', 'ORP 598 mV for 12 minutes; last test < 0.2 mg/L free chlorine', 'Bathers may be infected', 'Get bathers out, close the spa, test again with a diluted sample', 'now', 12, t),
  alarm(2, 'hall', 'R-031', 'acid-pump', 'main', 'medium', 'Acid pump reports a fault', 'State fault since 25 minutes', 'pH rises, disinfection weakens', 'Look for air in the suction line and at the tank', 'within the hour', 25, t),
  alarm(3, 'hall', 'R-010', 'main', 'main', 'low', 'Combined chlorine high', '0.62 mg/L against at most 0.5 mg/L', 'Irritation of eyes and skin, smell', 'Check the UV, dilute with fresh water', 'within the shift', 190, t, { state: 'acknowledged', acknowledged: true, acknowledgedBy: 'R. Hale', acknowledgedAt: iso(t - 100 * 60_000), comment: 'Fresh water valve opened' }),
  alarm(4, 'hall', 'R-020', 'learner-temp', 'learner', 'low', 'No flow at the sample cell', 'Flow switch open for 4 minutes', 'Probe values are not the pool\u2019s', 'Open the sample valve, clean the filter', 'within the shift', 300, t, { state: 'returned_unacknowledged', active: false, clearedAt: iso(t - 200 * 60_000) }),
  alarm(5, 'hall', 'R-040', 'hypo-pump', null, 'low', 'Hypochlorite tank low', '14 % left', 'Dosing will stop', 'Refill the day tank', 'within the shift', 400, t, { state: 'shelved', shelvedBy: 'R. Hale', shelvedWhy: 'Delivery at noon', shelvedUntil: iso(t + 50 * 60_000) }),
  alarm(6, 'hall', 'R-012', 'main-ph', 'main', 'low', 'pH climbs', '7.9 for 20 minutes', 'Disinfection weakens', 'See to the acid pump first', 'within the shift', 20, t, { consequenceOf: '0197a000-0000-7000-8000-000000000102', order: 6 }),
  alarm(7, 'hall', 'R-041', 'main-cl', 'main', 'low', 'Chlorine probe silent', 'No reading for 3 hours', 'The pool is blind there', 'Look at the cable', 'within the shift', 180, t, { state: 'out_of_service', outOfServiceBy: 'J. Marsh', outOfServiceAt: iso(t - 120 * 60_000), outOfServiceWhy: 'Cell is at the maker' }),
];

export const empty = c => ({
  id: c.id, version: 1, at: iso(Date.now()),
  pools: c.pools.map(p => ({ id: p.id, state: 'unknown', why: [said('u', 'Nothing is known yet')], manual: [], combined: null, balance: noBalance('Missing: pH'), hoclShare: null, due: [], bottomVisible: null, bathers: null })),
  probes: c.probes.map(p => ({ id: p.id, at: null, raw: null, value: null, good: false, stale: false, standing: 'unknown', reasons: [], bias: null, believed: null, verdict: 'not_comparable', judgedAt: null, pairs: 0, calibration: null })),
  pumps: c.pumps.map(p => ({ id: p.id, activity: 'unknown', since: null, heardAt: null, tankPercent: null, tankAt: null, stale: false })),
  alarms: [], jobs: [], proposals: [], ledger: { received: 0, stored: 0, duplicates: 0, refused: 0, inFlight: 0, storedByDeviceTime: 0, storedByPacket: 0, storedAtLeastOnce: 0, messages: 0 },
});
