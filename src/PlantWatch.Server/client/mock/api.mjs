import { probeById, site, valueAt } from './plant.mjs';
import { rules, story } from './rules.mjs';
import { circuitView, empty, entries, firstAlarms, iso, ledger } from './views.mjs';
import { marks, notes } from './past.mjs';
import { bathers, book, moves } from './stock.mjs';
import { boards, lines } from './boards.mjs';
import { whatIf } from './water.mjs';

const started = Date.now();
const check = (n, hours, ph, free, total) => {
  const t = started - hours * 3_600_000;
  const id = `0197a000-0000-7000-8000-0000000002${String(n).padStart(2, '0')}`;
  const results = [['ph', ph], ['free_chlorine', free], ['total_chlorine', total]].map(([measurand, value]) => ({ measurand, value, method: 'photometer', censoring: 'none', dilution: 1 }));
  const probe = { value: valueAt('main-ph', t), u: 0.02 };
  return {
    check: { id, poolId: 'main', sampledAt: iso(t), enteredAt: iso(t + 240_000), who: 'R. Hale', point: 'pool', place: null, results, panel: [{ probeId: 'main-ph', value: Number(probe.value.toFixed(2)) }], bottomVisible: true, bathers: 20, note: n === 2 ? 'Busy morning' : null, corrects: null, correctionReason: null },
    arrivedAt: iso(t + 245_000), combined: { value: total - free, u: 0.13, sampledAt: iso(t), remark: null }, remarks: [],
    judgements: [{ checkId: id, probeId: 'main-ph', measurand: 'ph', verdict: hours < 30 ? 'probe_drifts' : 'agrees', probe, test: { value: ph, u: 0.06 }, difference: { value: probe.value - ph, u: 0.065 }, bias: { value: 0.18 - hours * 0.002, u: 0.06 }, standing: hours < 30 ? 'out_of_specification' : 'good', reasons: [{ code: 'm', text: 'Probe and test differ by more than both uncertainties together' }], sampledAt: iso(t) }],
  };
};

export const state = {
  checks: [check(1, 3.2, 7.44, 1.28, 1.9), check(2, 8, 7.42, 1.1, 1.5), check(3, 26, 7.47, 1.35, 1.7), check(4, 33, 7.5, 1.3, 1.55), check(5, 50, 7.45, 1.5, 1.72), check(6, 74, 7.46, 1.4, 1.6)],
  alarms: firstAlarms(started), changes: [], notes: notes(started), jobs: [{ id: '0197a000-0000-7000-8000-000000000301', asset: 'acid-pump', assetName: 'Acid pump', seen: 'Air in the suction line', done: null, state: 'in_hand', alarmId: null, by: 'J. Marsh', at: iso(started - 20 * 60_000), taskId: null, parts: [], minutes: 25, openedAt: iso(started - 50 * 60_000), openedBy: 'J. Marsh', doneAt: null, effect: 'unknown', effectText: null, signs: [], pictures: [] }],
  calibrations: [
    { id: '0197a000-0000-7000-8000-000000000401', probeId: 'learner-ph', kind: 'offset', status: 'approved', slope: 1, offset: 0.08, checks: [], proposedBy: 'R. Hale', proposedAt: iso(started - 9e8), note: null, decidedBy: 'J. Marsh', decidedAt: iso(started - 8.9e8), decision: 'Six checks agree', holdsFrom: iso(started - 8.9e8) },
    { id: '0197a000-0000-7000-8000-000000000402', probeId: 'main-cl', kind: 'two_point', status: 'proposed', slope: 1.12, offset: -0.03, checks: ['x'], proposedBy: 'R. Hale', proposedAt: iso(started - 3e6), note: 'Two tests a day apart', decidedBy: null, decidedAt: null, decision: null, holdsFrom: null },
  ],
};
state.changes = state.alarms.flatMap(({ circuit, ...a }) => [{ at: a.raisedAt, change: 'raised', by: null, comment: null, alarm: a }, ...(a.acknowledgedAt ? [{ at: a.acknowledgedAt, change: 'acknowledged', by: a.acknowledgedBy, comment: a.comment, alarm: a }] : [])]).sort((x, y) => (x.at < y.at ? 1 : -1));

const tiers = [['raw', 10_000], ['minute', 60_000], ['quarter_hour', 900_000], ['hour', 3_600_000], ['day', 86_400_000]];

function series(q) {
  const probe = q.get('probe'), from = Date.parse(q.get('from')), to = Math.min(Date.now(), Date.parse(q.get('to'))), width = Number(q.get('width') ?? 600);
  const [tier, step] = tiers.find(([, s]) => (to - from) / s <= width) ?? tiers[4];
  const out = { series: probe, tier, t: [], min: [], mean: [], max: [], corrected: probe === 'learner-ph' ? [] : null };
  const wide = Math.min(1, step / 3_600_000) * 0.05 * Math.abs(valueAt(probe, from));
  for (let t = Math.ceil(from / step) * step; t < to; t += step) {
    const gap = Math.floor(t / 5_400_000) % 11 === 3 && tier !== 'day';
    const v = gap ? null : valueAt(probe, t);
    const spread = probeById.get(probe)?.measurand === 'ph' ? wide / 4 : wide / 2;
    out.t.push(t); out.mean.push(v); out.min.push(v === null ? null : v - (tier === 'raw' ? 0 : spread + 0.003)); out.max.push(v === null ? null : v + (tier === 'raw' ? 0 : spread + 0.003));
    out.corrected?.push(v === null ? null : v + 0.08);
  }
  return out;
}

const refuse = (errors, status = 400) => [status, { type: 'about:blank', title: 'Some fields cannot be taken', status, errors }];

function takeCheck(id, r) {
  const errors = [];
  r.results.forEach((x, i) => { if (x.measurand === 'ph' && (x.value < 4 || x.value > 11)) errors.push({ field: `results[${i}].value`, code: 'impossible', text: 'No pool has this pH.' }); });
  if (errors.length) return refuse(errors);
  const known = state.checks.find(c => c.check.id === id);
  if (known) return [200, known];
  const find = m => r.results.find(x => x.measurand === m);
  const judgements = site.circuits.flatMap(c => c.probes).filter(p => p.poolId === r.poolId && (find(p.measurand) || p.measurand === 'orp')).map(p => {
    const test = find(p.measurand), v = valueAt(p.id, Date.parse(r.sampledAt));
    const d = test ? v - test.value : 0, off = test && Math.abs(d) > (p.measurand === 'ph' ? 0.12 : 1);
    return { checkId: id, probeId: p.id, measurand: p.measurand, verdict: !test ? 'learning' : off ? 'probe_drifts' : 'agrees', probe: test ? { value: v, u: 0.02 } : null, test: test ? { value: test.value, u: 0.06 } : null, difference: test ? { value: d, u: 0.065 } : null, bias: test ? { value: d * 0.8, u: 0.07 } : null, standing: !test ? 'unknown' : off ? 'out_of_specification' : 'good', reasons: [{ code: 'm', text: !test ? 'Learning this pool\u2019s line: 4 of 8 checks' : off ? 'Six tests in a row lie on the same side' : 'They agree within both uncertainties' }], sampledAt: r.sampledAt };
  });
  const f = find('free_chlorine'), tot = find('total_chlorine');
  const remarks = f && f.value > 5 ? [{ field: `results[${r.results.indexOf(f)}].value`, code: 'unlikely', text: 'Far from the last test: repeat it.' }] : [];
  const answer = { check: { id, ...r }, arrivedAt: iso(Date.now()), combined: f && tot ? { value: tot.value - f.value, u: 0.13, sampledAt: r.sampledAt, remark: null } : null, remarks, judgements };
  state.checks.unshift(answer);
  return [200, answer];
}

function history(id) {
  const info = probeById.get(id);
  if (!info) return [404, { type: 'about:blank', title: 'No such probe', status: 404, errors: [] }];
  const c = site.circuits.find(x => x.probes.includes(info));
  const now = circuitView(c, Date.now(), 1, state).probes.find(p => p.id === id);
  const judgements = state.checks.flatMap(x => x.judgements).filter(j => j.probeId === id);
  const offer = id === 'main-ph' ? { kind: 'panel_adjustment', slope: 1, offset: -0.18, checks: state.checks.slice(0, 3).map(x => x.check.id), why: [{ code: 'o', text: 'Three checks in a row say the same' }, { code: 'o2', text: 'The probe is panel-scaled: the panel must be adjusted' }] }
    : id === 'learner-ph' ? { kind: 'offset', slope: 1, offset: 0.06, checks: [], why: [{ code: 'o', text: 'Two checks say the same' }] } : null;
  return [200, { info, now, judgements, calibrations: state.calibrations.filter(k => k.probeId === id).reverse(), offer, advice: offer?.why ?? [{ code: 'a', text: 'The checks give no reason for one' }] }];
}

function alarmAct(id, verb, body) {
  const a = state.alarms.find(x => x.id === id);
  if (!a) return refuse([], 404);
  if (!body.by) return refuse([{ field: 'by', code: 'required', text: 'Say who you are.' }]);
  const t = iso(Date.now());
  if (verb === 'acknowledge') Object.assign(a, { acknowledged: true, state: a.active ? 'acknowledged' : 'normal', acknowledgedBy: body.by, acknowledgedAt: t, comment: body.comment });
  if (verb === 'shelve') Object.assign(a, { state: 'shelved', shelvedBy: body.by, shelvedUntil: iso(Date.now() + body.minutes * 60_000) });
  if (verb === 'unshelve') Object.assign(a, { state: a.acknowledged ? 'acknowledged' : 'unacknowledged', shelvedBy: null, shelvedUntil: null });
  const { circuit, ...view } = a;
  state.changes.unshift({ at: t, change: { acknowledge: 'acknowledged', shelve: 'shelved', unshelve: 'unshelved' }[verb], by: body.by, comment: body.comment ?? body.why ?? null, alarm: { ...view } });
  state.alarms = state.alarms.filter(x => x.state !== 'normal');
  return [200, view];
}

function service(verb, body) {
  const a = state.alarms.find(x => x.rule === body.rule && x.subject === body.subject);
  if (!a) return refuse([{ field: 'key', code: 'alarm.not_watched', text: 'The plant file gives nothing that this rule watches there' }], 404);
  Object.assign(a, verb === 'out-of-service' ? { state: 'out_of_service', outOfServiceBy: body.by, outOfServiceWhy: body.why, outOfServiceAt: iso(Date.now()), outOfServiceUntil: body.until } : { state: a.acknowledged ? 'acknowledged' : 'unacknowledged' });
  return [200, a];
}

export function api(method, url, body, bare) {
  const [p0, p1, p2] = url.pathname.replace('/api/v1/', '').split('/').map(decodeURIComponent);
  const q = url.searchParams;
  if (p0 === 'site') return [200, site];
  if (p0 === 'circuits' && p2 === 'limits') return [200, { circuit: p1, pack: null, rows: [], pools: [], mayConfirm: [], stops: [['ph', 'pH', 'pH', 6.5, 8.2], ['free_chlorine', 'Free chlorine', 'mg/L', 0.2, 10], ['temperature', 'Temperature', 'degC', null, 40]].map(([quantity, name, unit, low, high]) => ({ quantity, name, unit, low, high, usualLow: low, usualHigh: high, why: null, by: null })) }];
  if (p0 === 'circuits') { const c = site.circuits.find(x => x.id === p1); return c ? [200, bare ? empty(c) : circuitView(c, Date.now(), 1, state)] : refuse([], 404); }
  if (p0 === 'pools' && p2 === 'what-if') return whatIf(body);
  if (p0 === 'broker') return [200, {
    kind: 'external', well: false, text: 'The certificate of broker.bramble.example:8883 ran out: 2026-11-28 09:00 UTC', since: iso(Date.now() - 7_200_000), encrypted: true,
    troubles: [
      { what: 'certificate_expired', now: true, text: 'The certificate of broker.bramble.example:8883 ran out: 2026-11-28 09:00 UTC', todo: 'Look at this machine\u2019s clock first, a wrong one looks the same. Then have a new certificate made by the same authority and put it at the broker.', since: iso(Date.now() - 7_200_000), topics: [] },
      { what: 'subscription_refused', now: false, text: 'broker.bramble.example:8883 does not let PlantWatch read some of its topics', todo: 'Give PlantWatch\u2019s account the right to subscribe to what is named below. The other topics arrive.', since: iso(Date.now() - 9_000_000), topics: ['hall/teaching/chlorine-and-a-very-long-name/of-a-topic: 0x87 NotAuthorized'] },
    ],
    silent: [{ topic: 'hall/panel', of: 'pH on the panel', since: iso(Date.now() - 600_000) }],
  }];
  if (p0 === 'health-view') return [200, { at: iso(Date.now()), broker: 'embedded', plantFile: [], ledger: ledger(Date.now()) }];
  if (p0 === 'series') return [200, bare ? { series: q.get('probe'), tier: 'raw', t: [], min: [], mean: [], max: [], corrected: null } : series(q)];
  if (p0 === 'checks' && method === 'PUT') return takeCheck(p1, body);
  if (p0 === 'checks' && p1) return [200, state.checks.find(c => c.check.id === p1)];
  if (p0 === 'checks') return [200, bare ? [] : state.checks.filter(c => (!q.get('pool') || c.check.poolId === q.get('pool')) && (!q.get('from') || c.check.sampledAt >= q.get('from')) && (!q.get('to') || c.check.sampledAt < q.get('to')))];
  if (p0 === 'probes') return history(p1);
  if (p0 === 'calibrations' && method === 'PUT') { const k = { id: p1, status: 'proposed', decidedBy: null, decidedAt: null, decision: null, holdsFrom: null, proposedAt: iso(Date.now()), proposedBy: body.by, ...body, by: undefined }; state.calibrations.push(k); return [200, k]; }
  if (p0 === 'calibrations' && p2 === 'decision') { const k = state.calibrations.find(x => x.id === p1); Object.assign(k, { status: body.decision, decidedBy: body.by, decidedAt: iso(Date.now()), decision: body.why, holdsFrom: body.decision === 'rejected' ? null : body.holdsFrom }); return [200, k]; }
  if (p0 === 'calibrations') return [200, state.calibrations.filter(k => !q.get('probe') || k.probeId === q.get('probe'))];
  if (p0 === 'boards' && p1) { const b = boards.find(x => x.id === p1); return b ? [200, b] : refuse([], 404); }
  if (p0 === 'boards') return [200, lines];
  if (p0 === 'entries') return [200, { entries: bare ? [] : entries(started), more: false }];
  if (p0 === 'notes' && method === 'PUT') { const { corrects, ...rest } = body; const old = state.notes.find(n => n.id === corrects); const n = { ...rest, id: p1, saidAt: iso(Date.now()), before: old ? [old, ...old.before] : [] }; state.notes = [n, ...state.notes.filter(x => x.id !== corrects && x.id !== p1)]; return [200, n]; }
  if (p0 === 'notes') return [200, bare ? [] : state.notes.filter(n => n.poolId === q.get('pool') && n.to >= q.get('from') && n.from < q.get('to'))];
  if (p0 === 'pools' && p2 === 'marks') return [200, bare || p1 !== 'main' ? { marks: [], more: false } : { marks: marks(state, started).filter(m => m.at >= q.get('from') && m.at < q.get('to')), more: false }];
  if (p0 === 'stock' && p1) return [200, bare ? [] : moves];
  if (p0 === 'stock') return [200, bare ? { ...book(), products: [], months: [], tooClose: [] } : book()];
  if (p0 === 'bathers') return [200, bare ? [] : bathers()];
  if (p0 === 'rules') return [200, rules(bare ? { alarms: [] } : state, site)];
  if (p0 === 'alarms' && p1?.endsWith('-service')) return service(p1, body);
  if (p0 === 'alarms' && p1 && !p2) { const s = story(state, p1); return s ? [200, s] : refuse([], 404); }
  if (p0 === 'alarms' && p2) return alarmAct(p1, p2, body);
  if (p0 === 'alarms') return [200, bare ? [] : state.changes];
  if (p0 === 'jobs' && method === 'PUT') { const f = { assetName: body.asset, openedAt: iso(Date.now()), openedBy: body.by, doneAt: null, effect: 'unknown', effectText: null, signs: [], pictures: [], ...body, id: p1, at: iso(Date.now()) }; state.jobs = [f, ...state.jobs.filter(x => x.id !== p1)]; return [200, f]; }
  if (p0 === 'tasks' || p0 === 'reliability') return [200, []];
  if (p0 === 'jobs') return [200, bare ? [] : state.jobs.filter(f => !q.get('asset') || f.asset === q.get('asset'))];
  if (p0 === 'refusals') return [200, bare ? [] : [
    { id: '1', receivedAt: iso(started - 6e5), circuit: 'hall', topic: 'plant/main/ph', payloadText: '17.2', payloadBytes: 4, reason: 'outside_range', text: '17.2 lies outside 0 to 14, the physical range of the instrument' },
    { id: '2', receivedAt: iso(started - 9e6), circuit: 'unclaimed', topic: 'plant/kitchen/fridge', payloadText: '4.1', payloadBytes: 3, reason: 'unknown_topic', text: 'No probe or pump of the plant file has this topic' },
    { id: '3', receivedAt: iso(started - 9.5e6), circuit: 'hall', topic: 'plant/main/orp', payloadText: '\ufffd\ufffd\u0001', payloadBytes: 3, reason: 'invalid_utf8', text: 'The payload is not valid UTF-8' }]];
  if (p0 === 'storage') return [200, {
    measuredAt: iso(started), bytes: 1.24e9, freeBytes: 0, tables: [{ name: 'reading', bytes: 6.1e8 }], readings: 2.2e7, letGo: 0, readingsADay: 86_400, bytesADay: 4.8e6, bytesInAYear: 3e9,
    diskFreeBytes: bare ? 3.9e8 : 8.2e10, daysLeft: bare ? 81.2 : null, rawDays: bare ? 90 : null, minuteDays: null, gone: [], backupAt: bare ? null : iso(started - 3e7) }];
  return refuse([], 404);
}
