import { families, standingAlarms } from '../alarms/order';
import { priorities } from '../alarms/priorities';
import type { PoolInfo } from '../contract';
import { circuitOfPool, circuits } from '../live/store';
import { PriorityGlyph } from '../parts/Glyph';
import { words } from '../words';

/** How many alarms stand on the pool and on what it shares, by priority; what follows from another is not counted again. Nothing where none does. */
export function AlarmLine({ pool }: { pool: PoolInfo }) {
  const all = circuits.value.get(circuitOfPool(pool.id)?.id ?? '')?.alarms ?? [];
  const own = families(standingAlarms(all.filter(a => a.poolId === pool.id || a.poolId === null))).map(f => f.cause);
  if (own.length === 0) return null;
  return (
    <p class="tile-alarms" data-testid={`alarms-${pool.id}`}><a href="#/alarms"><span class="sr">{words.overview.alarmsStand(own.length)}: </span>
      {priorities.map(p => ({ p, n: own.filter(a => a.priority === p).length })).filter(c => c.n > 0).map(c => <span class="mark" key={c.p}><PriorityGlyph priority={c.p} /><b>{c.n}</b> {words.inText(words.priority[c.p])}</span>)}
      <span aria-hidden="true">{words.overview.alarmsWord(own.length)}</span></a></p>
  );
}
