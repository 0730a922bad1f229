import { query } from '../api/http';
import type { AlarmChangeView, CheckAnswer } from '../contract';
import type { JobView } from '../contract.jobs';
import type { PoolStateChangeView } from '../contract.poolState';
import { decimalsOf, fixed } from '../format/number';
import { dayClock } from '../format/zone';
import { nameOf, zone } from '../live/store';
import { usePolled } from '../parts/usePolled';
import { words } from '../words';

const w = words.handover;

/** One thing that happened, as a line. */
interface Line { at: string; kind: keyof typeof w.kinds; text: string }

const ofAlarm = (c: AlarmChangeView): Line => ({ at: c.at, kind: 'alarm', text: `${words.alarmChange[c.change]}: ${c.alarm.title}, ${c.alarm.subjectName}${c.by ? `, ${c.by}` : ''}${c.comment ? `: ${c.comment}` : ''}` });
const ofCheck = ({ check }: CheckAnswer): Line => ({ at: check.sampledAt, kind: 'check', text: `${nameOf(check.poolId)}: ${w.tested(check.who, check.results.map(r => `${words.measurand[r.measurand]} ${fixed(r.value, decimalsOf(r.measurand))}`).join(', '))}` });
const ofJob = (j: JobView): Line => ({ at: j.at, kind: 'job', text: `${j.assetName}, ${words.inText(words.jobs.state[j.state])}: ${j.done ?? j.seen} (${j.by})` });
const ofPool = (p: PoolStateChangeView): Line => ({ at: p.at, kind: 'pool', text: `${nameOf(p.poolId)}: ${words.poolState.change(words.poolState.states[p.before], words.poolState.states[p.state])}${p.by ? `, ${p.by}` : ''}${p.why ? `: ${p.why}` : ''}` });

/** What was written in a time, newest first. */
export function Happened({ from }: { from: string }) {
  const alarms = usePolled<AlarmChangeView[]>('/alarms' + query({ from }), 60_000);
  const checks = usePolled<CheckAnswer[]>('/checks' + query({ from }), 60_000);
  const jobs = usePolled<JobView[]>('/jobs', 60_000);
  const pools = usePolled<PoolStateChangeView[]>('/pool-states' + query({ from }), 60_000);
  const all = [alarms, checks, jobs, pools];
  if (all.some(p => p.data === null)) return <p class="hint">{all.some(p => p.failed) ? words.error.unreachable : words.loading}</p>;
  const lines = [...alarms.data!.map(ofAlarm), ...checks.data!.map(ofCheck), ...jobs.data!.map(ofJob), ...pools.data!.map(ofPool)].filter(l => l.at >= from).sort((a, b) => (a.at < b.at ? 1 : -1));
  if (lines.length === 0) return <p class="hint">{w.quiet}</p>;
  return <ul class="history" data-testid="handover-happened">{lines.map((l, i) => <li key={i}><span class="hint">{dayClock(l.at, zone.value)}</span><span class="label">{w.kinds[l.kind]}</span><span>{l.text}</span></li>)}</ul>;
}
