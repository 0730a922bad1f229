import { priorities, rankOf } from '../../alarms/priorities';
import type { AlarmView } from '../../contract';
import type { TileView } from '../../contract.boards';
import { alarms, circuitOfPool, circuits } from '../../live/store';

/** Of the pools that are named, or of the one that is chosen, with what the circuit of such a pool shares: circulation that is lost is lost for each of them. */
export function wantedOf(tile: Pick<TileView, 'of' | 'atLeast'>, pool: string | null): AlarmView[] {
  const pools = pool !== null ? [pool] : tile.of;
  const grave = (a: AlarmView) => rankOf(a) <= priorities.indexOf(tile.atLeast);
  if (pools.length === 0) return alarms.value.filter(grave);
  const shared = new Set(pools.map(id => circuitOfPool(id)?.id));
  return [...circuits.value.values()].flatMap(c => c.alarms.filter(a => a.poolId === null ? shared.has(c.id) : pools.includes(a.poolId))).filter(grave);
}
