import { families, standingAlarms } from '../alarms/order';
import type { AlarmView, PoolInfo } from '../contract';
import { circuitOfPool, circuits, poolViews } from '../live/store';
import type { Weight } from './order';

/** The alarms of a pool and of what it shares; what follows from another is not counted again. */
export function alarmsOfPool(poolId: string): AlarmView[] {
  const all = circuits.value.get(circuitOfPool(poolId)?.id ?? '')?.alarms ?? [];
  return families(standingAlarms(all.filter(a => a.poolId === poolId || a.poolId === null))).map(f => f.cause);
}

export const weightOf = (pool: PoolInfo): Weight => ({ state: poolViews.value.get(pool.id)?.state ?? 'unknown', alarms: alarmsOfPool(pool.id) });
