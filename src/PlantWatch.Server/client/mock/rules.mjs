import { readFileSync } from 'node:fs';

// The page of rules as the server carries it, read the same way, so that its words are looked at and not invented ones.
const page = readFileSync(new URL('../../../../docs/rules.md', import.meta.url), 'utf8');

const sheet = text => {
  const lines = text.split('\n'), [, number, title] = /^(R-\d{3}) (.+)$/.exec(lines[0]);
  const row = Object.fromEntries(lines.filter(l => /^\| [^|]+ \| .* \|$/.test(l)).map(l => /^\| ([^|]+) \| (.*) \|$/.exec(l).slice(1)));
  return { number, title, sentence: lines.slice(1).find(l => l), row };
};
const sheets = page.split('\n## ').slice(1).map(sheet);

export function rules(state, site) {
  const things = site.circuits.flatMap(c => [...c.pools, ...c.probes, ...c.pumps]).map(x => ({ subject: x.id, name: x.name }));
  return sheets.map(({ number, title, sentence, row }, i) => ({
    number, title, sentence, cause: row.cause, consequence: row.consequence, action: row['what to do'], timeToRespond: row['time to respond'], priority: row.priority,
    onDelay: row['on-delay'], offDelay: row['off-delay'], deadband: row.deadband, suppressed: row.suppressed, clears: row.clears, provenance: row.provenance,
    latches: row.clears.includes('it latches'), shelvable: row.priority !== 'critical', mayLeaveService: row.priority !== 'critical' && number !== 'R-090', reAlarmMinutes: { critical: 60, high: 240, medium: 480 }[row.priority] ?? null,
    rang: (i * 7) % 11, lastRang: (i * 7) % 11 ? new Date(Date.now() - i * 3_600_000).toISOString() : null, standing: state.alarms.filter(a => a.rule === number && a.active).length,
    subjects: row.priority === 'critical' || number === 'R-090' ? [] : things,
    outOfService: state.alarms.filter(a => a.rule === number && a.state === 'out_of_service').map(a => ({ id: a.id, subject: a.subject, name: a.subjectName, by: a.outOfServiceBy, at: a.outOfServiceAt, why: a.outOfServiceWhy, until: a.outOfServiceUntil ?? null })),
  }));
}

export function story(state, id) {
  const live = state.alarms.find(a => a.id === id), known = live ?? state.changes.find(c => c.alarm.id === id)?.alarm;
  if (!known) return null;
  const { circuit, ...alarm } = known, { sentence, row } = sheets.find(s => s.number === alarm.rule) ?? sheets[0];
  return {
    alarm, live: !!live, subjectName: alarm.subjectName, newerId: null, sentence, usualCause: row.cause, clears: row.clears,
    strip: alarm.subject === 'main-ph' ? { probeId: 'main-ph', poolId: 'main', measurand: 'ph', low: null, high: 7.6 } : null,
    cause: state.alarms.find(a => a.id === alarm.consequenceOf) ?? null, consequences: state.alarms.filter(a => a.consequenceOf === id),
    changes: state.changes.filter(c => c.alarm.id === id).reverse(),
    earlier: [1, 3, 9].map(d => ({ id: `0197a000-0000-7000-8000-00000000090${d}`, raisedAt: new Date(Date.parse(alarm.raisedAt) - d * 86_400_000).toISOString(), cause: alarm.cause })),
  };
}
