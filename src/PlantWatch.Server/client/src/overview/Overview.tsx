import { isDead } from '../live/dead';
import { circuits, site } from '../live/store';
import { DueReagents } from '../reagents/DueReagents';
import { RoundLine } from '../round/RoundLine';
import { words } from '../words';
import { worstFirst } from './order';
import { PoolCard } from './PoolCard';
import { weightOf } from './weigh';

export function Overview() {
  const plant = site.value;
  if (!plant) return <p class="empty">{words.overview.waiting}</p>;
  // Drawn once the state is there to be drawn: what fills up piece by piece jumps away under the thumb. Where none comes, the names alone, as unknown.
  if (circuits.value.size === 0 && plant.circuits.length > 0 && !isDead()) return <p class="empty">{words.overview.waiting}</p>;
  const pools = plant.circuits.flatMap(c => c.pools);
  if (pools.length === 0) return <div class="empty"><p>{words.overview.empty}</p><p><a class="button" href="#/start" data-testid="begin">{words.overview.begin}</a></p></div>;
  const sorted = worstFirst(pools, weightOf);
  return (
    <>
      <h1 class="sr">{words.overview.title}</h1>
      <RoundLine />
      <div class="pools">{sorted.map(p => <PoolCard key={p.id} pool={p} />)}</div>
      <DueReagents />
    </>
  );
}
