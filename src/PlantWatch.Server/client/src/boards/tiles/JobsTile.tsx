import type { JobView, TaskView } from '../../contract.jobs';
import { dayClock } from '../../format/zone';
import { now } from '../../live/clock';
import { circuits, nameOf, zone } from '../../live/store';
import { Age } from '../../parts/Age';
import { PoolGlyph } from '../../parts/Glyph';
import { useShared } from '../../parts/useShared';
import { link } from '../../router';
import { words } from '../../words';
import { probesOf, pumpsOf } from '../resolve';
import { aboutOf, type TileProps } from './props';

const soon = 2 * 86_400_000;

function One({ job: j, wall }: { job: JobView; wall: boolean }) {
  const name = nameOf(j.asset) === j.asset ? j.assetName : nameOf(j.asset);
  return (
    <li class={`fault f-${j.state}`} data-testid={`board-job-${j.asset}`}>
      <div class="pump-head"><b>{wall ? name : <a href={link('jobs', j.asset)}>{name}</a>}</b><span class="fault-state">{words.jobs.state[j.state]}</span></div>
      <p>{j.seen}</p>
      <p class="hint">{j.by}, <Age at={j.at} /></p>
    </li>
  );
}

/** Of one pool, or of the things that are named. */
function isWanted(p: TileProps): (asset: string) => boolean {
  if (p.pool === null && p.tile.of.length === 0) return () => true;
  const all = { ...p.tile, of: [] as string[], measurands: [] }, about = aboutOf(p);
  const ids = new Set([...probesOf(all, about), ...pumpsOf(all, about)].map(x => x.id).filter(id => p.tile.of.length === 0 || p.tile.of.includes(id)));
  return asset => ids.has(asset) || asset === p.pool;
}

/** Jobs that are not over, and planned work that is due or will be within two days. */
export function JobsTile(p: TileProps) {
  const wanted = isWanted(p);
  const jobs = [...circuits.value.values()].flatMap(c => c.jobs).filter(j => j.state !== 'done' && wanted(j.asset));
  const { data } = useShared<TaskView[]>('/tasks', 5 * 60_000);
  const tasks = (data ?? []).filter(t => Date.parse(t.dueAt) - now.value < soon && wanted(t.asset));
  return (
    <>
      {jobs.length === 0 ? <p class="hint">{words.boards.noJobs}</p> : <ul class="fault-list">{jobs.slice(0, p.tile.most).map(j => <One key={j.id} job={j} wall={p.wall} />)}</ul>}
      {jobs.length > p.tile.most && <p class="hint">{words.overview.more(jobs.length - p.tile.most)}</p>}
      {tasks.length > 0 && <ul class="due">{tasks.map(t => <li key={t.circuit + t.id} class={t.overdue ? 'overdue' : ''}><PoolGlyph state="due" /><span><b>{t.overdue ? words.overview.overdue : words.overview.due}</b> {dayClock(t.dueAt, zone.value)}: {t.name} <span class="hint">({t.assetName})</span></span></li>)}</ul>}
    </>
  );
}
