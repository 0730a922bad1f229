import type { ComponentChildren } from 'preact';
import type { PoolInfo, PoolView } from '../../contract';
import { poolViews } from '../../live/store';
import { words } from '../../words';
import { poolsOf } from '../resolve';
import { Nothing } from './Nothing';
import { aboutOf, type TileProps } from './props';

/** A part a pool under its name; without the name on a board of one pool. */
export function OfPools({ p, href, children }: { p: TileProps; href?: ((poolId: string) => string) | undefined; children: (pool: PoolInfo, view: PoolView) => ComponentChildren }) {
  const pools = poolsOf(p.tile, aboutOf(p));
  if (pools.length === 0) return <Nothing of={words.boards.noPools} />;
  return (
    <div class="of-pools">{pools.map(pool => {
      const view = poolViews.value.get(pool.id);
      return (
        <div key={pool.id} class="of-pool">
          {p.pool === null && <h3>{href && !p.wall ? <a href={href(pool.id)}>{pool.name}</a> : pool.name}</h3>}
          {view ? children(pool, view) : <p class="hint">{words.overview.noState}</p>}
        </div>);
    })}</div>
  );
}
