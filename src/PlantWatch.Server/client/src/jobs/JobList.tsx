import type { JobView } from '../contract.jobs';
import { nameOf } from '../live/store';
import { Age } from '../parts/Age';
import { TickGlyph, WarnGlyph } from '../parts/Glyph';
import { words } from '../words';
import { pathOf } from './pictures';

const w = words.jobs;

function Effect({ job }: { job: JobView }) {
  if (job.state !== 'done' || job.taskId) return null;
  if (job.effect === 'unknown') return <p class="hint">{w.watching}</p>;
  return <p class="mark" data-testid={`effect-${job.effect}`}>{job.effect === 'helped' ? <TickGlyph /> : job.effect === 'did_not_help' ? <WarnGlyph /> : null}<span>{job.effectText}{job.signs.length > 0 && <span class="hint"> ({w.judgedBy}: {job.signs.join(', ')})</span>}</span></p>;
}

function Work({ job }: { job: JobView }) {
  const facts = [...job.parts.map(p => w.parted(p.count, p.name)), ...(job.minutes === null ? [] : [w.worked(job.minutes)])];
  return facts.length > 0 ? <p class="hint">{facts.join(', ')}</p> : null;
}

/** Jobs, each in its newest version. */
export function JobList({ jobs, onOpen }: { jobs: JobView[]; onOpen: (job: JobView) => void }) {
  if (jobs.length === 0) return <p class="hint">{w.none}</p>;
  return (
    <ul class="fault-list">
      {jobs.map(j => (
        <li key={j.id} class={`fault f-${j.state}`} data-testid={`job-${j.asset}`} data-state={j.state} data-effect={j.effect}>
          <div class="pump-head"><b>{nameOf(j.asset) === j.asset ? j.assetName : nameOf(j.asset)}</b><span class="fault-state">{w.state[j.state]}</span></div>
          <p>{j.seen}</p>
          {j.done && <p><span class="label">{w.done}:</span> {j.done}</p>}
          <Effect job={j} />
          <Work job={j} />
          {j.pictures.length > 0 && <ul class="picture-list" data-testid="job-pictures">{j.pictures.map((hash, n) => <li key={hash}><a href={pathOf(hash)} target="_blank" rel="noopener"><img src={pathOf(hash)} alt={w.pictureNo(n + 1, j.seen)} width="96" height="96" loading="lazy" /></a></li>)}</ul>}
          <p class="hint">{j.by}, <Age at={j.at} />{j.openedBy !== j.by && `; ${w.since(j.openedBy)}`}{j.alarmId && `; ${w.linked}`}{j.taskId && `; ${w.planOf}`}</p>
          {(j.state !== 'done' || j.effect === 'did_not_help') && <button type="button" class="slim" data-testid={`carry-on-${j.asset}`} onClick={() => onOpen(j)}>{j.state === 'done' ? w.again : w.carryOn}</button>}
        </li>))}
    </ul>
  );
}
