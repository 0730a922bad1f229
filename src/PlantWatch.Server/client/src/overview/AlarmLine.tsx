import { priorities } from '../alarms/priorities';
import type { AlarmView, PoolInfo } from '../contract';
import { PriorityGlyph } from '../parts/Glyph';
import { words } from '../words';
import { alarmsOfPool } from './weigh';

const w = words.overview;

function Counts({ of }: { of: AlarmView[] }) {
  return <>{priorities.map(p => ({ p, n: of.filter(a => a.priority === p).length })).filter(c => c.n > 0).map(c => <span class="mark" key={c.p}><PriorityGlyph priority={c.p} /><b>{c.n}</b> {words.inText(words.priority[c.p])}</span>)}</>;
}

/** How many alarms stand on the pool and on what it shares, by priority, and how many are gone that nobody has acknowledged. Nothing where there is none. */
export function AlarmLine({ pool }: { pool: PoolInfo }) {
  const own = alarmsOfPool(pool.id), gone = own.filter(a => a.state === 'returned_unacknowledged'), stand = own.filter(a => !gone.includes(a));
  if (own.length === 0) return null;
  return (
    <p class="tile-alarms" data-testid={`alarms-${pool.id}`}><a href="#/alarms">
      {stand.length > 0 && <span class="tile-counts"><span class="sr">{w.alarmsStand(stand.length)}: </span><Counts of={stand} /> <span aria-hidden="true">{w.alarmsWord(stand.length)}</span></span>}
      {gone.length > 0 && <span class="tile-counts">{stand.length > 0 && <span class="sr">, </span>}<Counts of={gone} /> <span>{w.alarmsGone(gone.length)}</span></span>}
    </a></p>
  );
}
