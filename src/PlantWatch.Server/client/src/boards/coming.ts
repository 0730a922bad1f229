import type { DueView, PoolInfo } from '../contract';
import { fromField, toField } from '../format/zone';

const day = 86_400_000;

/** When a time of day comes next on the site's clock, from a moment on. */
function next(timeOfDay: string, zone: string, from: number): number | null {
  for (const ahead of [0, day, 2 * day]) {
    const at = fromField(`${toField(from + ahead, zone).slice(0, 10)}T${timeOfDay.slice(0, 5)}`, zone);
    if (at !== null && at > from) return at;
  }
  return null;
}

/** The checks of pools that come due within so many hours, soonest first. What is due already is told by the server. */
export function coming(pools: PoolInfo[], hours: number, zone: string, now: number): DueView[] {
  const found = pools.flatMap(p => p.duties.flatMap(d => d.at.map(t => ({ poolId: p.id, what: d.what, at: next(t, zone, now) }))));
  return found.filter((d): d is typeof d & { at: number } => d.at !== null && d.at <= now + hours * 3_600_000)
    .sort((a, b) => a.at - b.at).map(d => ({ poolId: d.poolId, what: d.what, dueAt: new Date(d.at).toISOString(), overdue: false }));
}
