import { Missing } from '../parts/Missing';
import type { ComponentChildren } from 'preact';
import type { PoolInfo } from '../contract';
import { allPools } from '../live/store';
import { words } from '../words';
import { WaterNav, type WaterPage } from './WaterNav';

/** What every page about a pool's water begins with: the pool's name, the links, and a plain word where there is no such pool. */
export function WaterFrame({ poolId, page, children }: { poolId: string; page: WaterPage; children: (pool: PoolInfo) => ComponentChildren }) {
  const pool = allPools.value.get(poolId);
  if (!pool) return <Missing />;
  return (
    <div class="water-page" key={pool.id}>
      <WaterNav poolId={pool.id} here={page} />
      <header class="water-head"><h1>{words.water.titles[page]}</h1><span class="water-pool">{pool.name}</span></header>
      {children(pool)}
    </div>
  );
}
