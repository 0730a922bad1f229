import type { ComponentChildren } from 'preact';
import { inOrder, isAside } from '../alarms/order';
import type { AlarmView, DueView } from '../contract';
import type { JobView, TaskView } from '../contract.jobs';
import { runningOut } from '../chemicals/lasting';
import type { StockBookView } from '../contract.stock';
import { fixed } from '../format/number';
import { dayClock } from '../format/zone';
import { now } from '../live/clock';
import { alarms, circuits, nameOf, poolViews, zone } from '../live/store';
import { Age } from '../parts/Age';
import { PoolGlyph, PriorityGlyph, WarnGlyph } from '../parts/Glyph';
import { usePolled, type Polled } from '../parts/usePolled';
import { words } from '../words';

const w = words.handover;
const day = 86_400_000;

/** A part of the page; while its count is null nobody knows it, and it does not say that there is nothing: it is on its way, or cannot be had. */
function Part({ title, none, count, id, children, failed = false }: { title: string; none: string; count: number | null; id: string; children: ComponentChildren; failed?: boolean }) {
  if (count === null) return <div class="sheet card" data-testid={`handover-${id}`}><h2>{title}</h2>{failed ? <p class="mark" role="status"><WarnGlyph /><span>{words.error.unreachable}</span></p> : <p class="hint">{words.loading}</p>}</div>;
  return <div class="sheet card" data-testid={`handover-${id}`}><h2>{title}</h2>{count === 0 ? <p class="hint">{none}</p> : <ul class="handover-list">{children}</ul>}</div>;
}

function Pools() {
  const pools = [...poolViews.value.values()];
  return (
    <Part title={w.pools} none={words.bar.unknown} count={pools.length} id="pools">
      {pools.map(p => (
        <li key={p.id}><span class="mark"><PoolGlyph state={p.state} /><span><b>{nameOf(p.id)}</b>: {words.pool[p.state]}{p.operation && p.operation.state !== 'not_stated' && `; ${w.run} ${words.inText(words.poolState.states[p.operation.state])}`}</span></span>
          {p.why[0] && p.state !== 'normal' && <span class="hint">{p.why[0].text}</span>}</li>))}
    </Part>
  );
}

function Alarm({ alarm }: { alarm: AlarmView }) {
  const why = alarm.shelvedUntil ? `${words.alarms.shelvedBy(alarm.shelvedBy ?? '', dayClock(alarm.shelvedUntil, zone.value))}${alarm.shelvedWhy ? `: ${alarm.shelvedWhy}` : ''}`
    : alarm.outOfServiceBy ? `${alarm.outOfServiceBy}: ${alarm.outOfServiceWhy ?? ''}` : alarm.suppressedBy ?? (alarm.comment ? `${alarm.acknowledgedBy}: ${alarm.comment}` : null);
  return (
    <li><span class="mark"><PriorityGlyph priority={alarm.priority} /><span><b>{alarm.title}</b>, {alarm.subjectName}</span></span>
      <span>{alarm.cause}</span><span class="hint">{words.alarmState[alarm.state]}, <Age at={alarm.raisedAt} />{why && `; ${why}`}</span></li>
  );
}

function Jobs({ read }: { read: Polled<JobView[]> }) {
  const jobs = read.data;
  const open = (jobs ?? []).filter(j => j.state !== 'done' || j.effect === 'did_not_help');
  return (
    <Part title={w.jobs} none={w.noJobs} count={jobs && open.length} failed={read.failed} id="jobs">
      {open.map(j => (
        <li key={j.id}><span><b>{j.assetName}</b>: {j.seen}</span><span class="hint">{j.state === 'done' ? j.effectText : words.jobs.state[j.state]}, {j.by}, <Age at={j.at} /></span></li>))}
    </Part>
  );
}

interface Owed { key: string; name: string; at: string; overdue: boolean }
const ofCheck = (d: DueView): Owed => ({ key: d.poolId + d.dueAt, name: `${w.check} ${nameOf(d.poolId)}: ${d.what.map(q => words.measurand[q]).join(', ')}`, at: d.dueAt, overdue: d.overdue });
const ofTask = (t: TaskView): Owed => ({ key: t.circuit + t.id, name: `${t.name}, ${t.assetName}`, at: t.dueAt, overdue: t.overdue });

function Due({ read }: { read: Polled<TaskView[]> }) {
  const tasks = read.data;
  const soon = (tasks ?? []).filter(t => Date.parse(t.dueAt) < now.value + day);
  const owed = [...[...poolViews.value.values()].flatMap(p => p.due).map(ofCheck), ...soon.map(ofTask)].sort((a, b) => (a.at < b.at ? -1 : 1));
  return (
    <Part title={w.due} none={w.noDue} count={tasks && owed.length} failed={read.failed} id="due">
      {owed.map(o => <li key={o.key}><span class="mark">{o.overdue && <WarnGlyph />}<span>{o.name}</span></span><span class="hint">{o.overdue ? w.overdue : w.dueAt} {dayClock(o.at, zone.value)}</span></li>)}
    </Part>
  );
}

function Chemicals({ read }: { read: Polled<StockBookView> }) {
  const book = read.data, out = book && runningOut(book.products), c = words.chemicals;
  return (
    <Part title={c.handover} none={c.handoverNone} count={out && out.length} failed={read.failed} id="chemicals">
      {(out ?? []).map(p => <li key={p.id}><span class="mark"><WarnGlyph /><span><b>{p.name}</b>: {c.handoverLeft(fixed(Math.floor(p.outlook!.earliest!), 0))}</span></span>{p.deliveryDays !== null && <span class="hint">{c.orderHint(fixed(p.deliveryDays, 0))}</span>}</li>)}
    </Part>
  );
}

/** What stands now, worst first; with a dead connection the bar above says that it is old. */
export function Standing() {
  const jobs = usePolled<JobView[]>('/jobs', 60_000);
  const tasks = usePolled<TaskView[]>('/tasks', 60_000);
  const book = usePolled<StockBookView>('/stock', 60_000);
  if (circuits.value.size === 0) return <p class="empty">{words.bar.unknown}</p>;
  const all = inOrder(alarms.value.filter(a => a.state !== 'normal'));
  const standing = all.filter(a => !isAside(a)), aside = all.filter(isAside);
  return (
    <>
      <Pools />
      <Part title={w.alarms} none={w.noAlarms} count={standing.length} id="alarms">{standing.map(a => <Alarm key={a.id} alarm={a} />)}</Part>
      <Part title={w.aside} none={w.noAside} count={aside.length} id="aside">{aside.map(a => <Alarm key={a.id} alarm={a} />)}</Part>
      <Jobs read={jobs} />
      <Due read={tasks} />
      <Chemicals read={book} />
    </>
  );
}
