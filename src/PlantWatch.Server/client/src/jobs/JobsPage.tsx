import { useEffect, useState } from 'preact/hooks';
import type { JobView, ReliabilityView, TaskView } from '../contract.jobs';
import { circuits, nameOf } from '../live/store';
import { usePolled } from '../parts/usePolled';
import { go } from '../router';
import { words } from '../words';
import { beginningOf, keep, kept, type Beginning } from './draft';
import { JobForm } from './JobForm';
import { JobList } from './JobList';
import { KitDates } from './KitDates';
import { PlannedWork } from './PlannedWork';
import { ReliabilityTable } from './ReliabilityTable';

const w = words.jobs;

/** The board: where each job stands, worst first. */
const lanes: { key: 'failed' | 'open' | 'in_hand' | 'waiting_for_parts' | 'watched' | 'over'; holds: (job: JobView) => boolean }[] = [
  { key: 'failed', holds: j => j.state === 'done' && j.effect === 'did_not_help' },
  { key: 'open', holds: j => j.state === 'open' },
  { key: 'in_hand', holds: j => j.state === 'in_hand' },
  { key: 'waiting_for_parts', holds: j => j.state === 'waiting_for_parts' },
  { key: 'watched', holds: j => j.state === 'done' && j.effect === 'unknown' && !j.taskId },
  { key: 'over', holds: j => j.state === 'done' && (j.effect === 'helped' || j.effect === 'cannot_tell' || j.taskId !== null) },
];
const overShown = 20;

function Board({ jobs, onOpen }: { jobs: JobView[]; onOpen: (job: JobView) => void }) {
  const filled = lanes.map(l => ({ ...l, jobs: jobs.filter(l.holds) })).filter(l => l.jobs.length > 0);
  return (
    <>
      {!filled.some(l => l.key !== 'over') && <section class="sheet card"><p>{w.nothing}</p></section>}
      {filled.map(l => (
        <section key={l.key} class="sheet card" data-testid={`lane-${l.key}`}><h2>{w[l.key]} <span class="count">{l.jobs.length}</span></h2>
          <JobList jobs={l.key === 'over' ? l.jobs.slice(0, overShown) : l.jobs} onOpen={onOpen} /></section>))}
    </>
  );
}

/** Jobs that were written on this device and not saved. */
function Unsaved({ jobs, onOpen }: { jobs: JobView[]; onOpen: (begin: Beginning) => void }) {
  const all = Object.entries(kept.value);
  if (all.length === 0) return null;
  return (
    <section class="sheet outbox" data-testid="jobs-unsaved"><h2>{w.unsaved}</h2>
      <ul>{all.map(([key, k]) => (
        <li key={key}><p><b>{nameOf(k.draft.asset)}</b> {k.draft.seen}</p>
          <div class="inline"><button type="button" data-testid="job-go-on" onClick={() => onOpen(beginningOf(key, k, jobs))}>{w.goOn}</button>
            <button type="button" onClick={() => { if (confirm(words.check.clearSure)) keep(key, null); }}>{words.outbox.drop}</button></div></li>))}</ul>
    </section>
  );
}

/** Jobs of maintenance: the board, planned work, and how often things failed. The address may name the thing to write about. */
export function JobsPage({ asset }: { asset: string | null }) {
  const [open, setOpen] = useState<Beginning | null>(asset ? { job: null, asset } : null);
  useEffect(() => { if (asset) setOpen({ job: null, asset }); }, [asset]);
  const jobs = usePolled<JobView[]>('/jobs', 60_000);
  const tasks = usePolled<TaskView[]>('/tasks', 60_000);
  const often = usePolled<ReliabilityView[]>('/reliability', 600_000);
  const live = [...circuits.value.values()].flatMap(c => c.jobs).map(j => j.id + j.at + j.effect).join();
  useEffect(() => { if (jobs.data) { jobs.reload(); tasks.reload(); } }, [live]);
  const close = () => { setOpen(null); if (asset) go('jobs'); jobs.reload(); tasks.reload(); };
  const filters = (often.data ?? []).map(r => ({ id: r.asset, name: r.assetName }));
  return (
    <div class="pages two-columns jobs-page">
      <section class="stack">
        <div class="pump-head"><h1>{w.title}</h1>{open === null && <button type="button" class="primary" data-testid="new-job" onClick={() => setOpen({ job: null, asset: null })}>{w.newJob}</button>}</div>
        <p>{w.lead}</p>
        {open === null && <Unsaved jobs={jobs.data ?? []} onOpen={setOpen} />}
        {open !== null && <JobForm key={open.key ?? open.job?.id ?? `new-${open.asset}-${open.task?.id}`} begin={open} filters={filters} onDone={close} />}
        {jobs.data === null ? <p class="hint unfilled">{jobs.failed ? words.error.unreachable : words.loading}</p> : <Board jobs={jobs.data} onOpen={job => setOpen({ job, asset: null })} />}
      </section>
      <section class="stack">
        <div class="sheet card"><h2>{w.planned}</h2>
          {tasks.data === null ? <p class="hint unfilled">{tasks.failed ? words.error.unreachable : words.loading}</p>
            : <PlannedWork tasks={tasks.data} onWrite={t => setOpen({ job: (jobs.data ?? []).find(j => j.id === t.jobId) ?? null, asset: t.asset, task: { id: t.id, name: t.name } })} />}</div>
        <KitDates />
        <div class="sheet card"><h2>{w.often}</h2>
          {often.data === null ? <p class="hint unfilled">{often.failed ? words.error.unreachable : words.loading}</p> : <ReliabilityTable rows={often.data} />}</div>
      </section>
    </div>
  );
}
