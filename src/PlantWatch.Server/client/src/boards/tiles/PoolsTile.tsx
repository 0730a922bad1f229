import { worstFirst } from '../../overview/order';
import { PoolCard } from '../../overview/PoolCard';
import { weightOf } from '../../overview/weigh';
import { words } from '../../words';
import { poolsOf } from '../resolve';
import { WallPool } from '../wall/WallPool';
import { Nothing } from './Nothing';
import { aboutOf, type TileProps } from './props';

/** A card a pool, the worst first. */
export function PoolsTile(p: TileProps) {
  const pools = worstFirst(poolsOf(p.tile, aboutOf(p)), weightOf);
  if (pools.length === 0) return <Nothing of={words.boards.noPools} />;
  return <div class="pools">{pools.map(x => (p.wall ? <WallPool key={x.id} pool={x} /> : <PoolCard key={x.id} pool={x} />))}</div>;
}
