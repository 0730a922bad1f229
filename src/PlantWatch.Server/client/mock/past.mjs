// What happened and what was noted, for the marks over the strips.

const iso = t => new Date(t).toISOString();
const hours = (t, h) => iso(t - h * 3_600_000);

export const notes = t => [
  { id: '0197a000-0000-7000-8000-000000000901', poolId: 'main', from: hours(t, 4.5), to: hours(t, 3), text: 'School party, forty children', by: 'R. Hale', saidAt: hours(t, 2.9), why: null, retracted: false, before: [] },
  { id: '0197a000-0000-7000-8000-000000000903', poolId: 'main', from: hours(t, 3.6), to: hours(t, 2.2), text: 'UV off for a lamp change', by: 'J. Marsh', saidAt: hours(t, 2), why: 'the other lamp', retracted: false, before: [
    { id: '0197a000-0000-7000-8000-000000000902', from: hours(t, 3.6), to: hours(t, 2.2), text: 'UV off', by: 'J. Marsh', saidAt: hours(t, 2.1), why: null, retracted: false }] },
  { id: '0197a000-0000-7000-8000-000000000904', poolId: 'main', from: hours(t, 1.2), to: hours(t, 0.9), text: 'Sample pump off', by: 'R. Hale', saidAt: hours(t, 0.8), why: 'that was the spa', retracted: true, before: [] },
];

export function marks(state, t) {
  const mark = (n, kind, h, subject, subjectName, text, by, until = null) => ({ id: `0197a000-0000-7000-8000-0000000008${String(n).padStart(2, '0')}`, kind, at: hours(t, h), until, subject, subjectName, text, by });
  return [
    ...state.checks.map(c => ({ id: c.check.id, kind: 'test', at: c.check.sampledAt, until: null, subject: 'main', subjectName: 'Main pool', text: `Tested: ${c.check.results.map(r => `${r.measurand} ${r.value}`).join(', ')}`, by: c.check.who })),
    ...state.alarms.filter(a => a.circuit === 'hall' && a.active).map(a => ({ id: a.id, kind: 'alarm', at: a.raisedAt, until: a.clearedAt, subject: a.subject, subjectName: a.subjectName, text: `${a.title}: ${a.cause}`, by: null })),
    mark(1, 'dose', 4.9, 'main', 'Main pool', 'Dose given: 3.2 kg of sodium bicarbonate', 'R. Hale'), mark(2, 'calibration', 5.5, 'main-ph', 'Main pool, pH', 'Adjusted on the panel', 'J. Marsh'), mark(3, 'wash', 2.4, 'filter-1', 'Filter 1', 'Washed, 8.2 m\u00b3 drained', 'J. Marsh'),
    mark(4, 'stock', 5.1, 'hypo', 'Hypochlorite', 'Delivered: 200 L of hypochlorite, checked by T. Wren', 'R. Hale'), mark(5, 'job', 0.8, 'acid-pump', 'Main pool, Acid pump', 'Job in hand: air in the suction line', 'J. Marsh'), mark(6, 'pool', 5.9, 'main', 'Main pool', 'Open', 'R. Hale'),
  ].sort((a, b) => (a.at < b.at ? -1 : 1));
}
