import type { CircuitInfo } from '../contract';
import type { CircuitLimitsView, PackInfo } from '../contract.limits';
import { usePolled } from '../parts/usePolled';
import { words } from '../words';
import { PoolBounds } from './PoolBounds';
import { StopList } from './StopList';

const w = words.limits;

/** Nothing was picked: what that means, and the key that picks one. */
export function NoPack({ circuit, view }: { circuit: CircuitInfo; view: CircuitLimitsView }) {
  const { data } = usePolled<PackInfo[]>('/limit-packs');
  return (<>
    <section class="sheet card" data-testid={`limits-${circuit.id}`} aria-labelledby={`limits-name-${circuit.id}`}>
      <h2 id={`limits-name-${circuit.id}`}>{circuit.name}</h2>
      <p><b>{w.noPack}</b></p>
      <p>{w.noPackMeans}</p>
      <p><code>{w.noPackKey}</code></p>
      {data && <details><summary>{w.noPackList} ({data.length})</summary>
        <ul class="pack-names">{data.map(p => <li key={p.id}><code>{p.id}</code> {p.authority}, {p.edition}{p.superseded && ` (${w.superseded})`}</li>)}</ul></details>}
      {view.pools.map(p => <PoolBounds key={p.pool} circuit={circuit} pool={p} rows={[]} onRow={() => {}} />)}
    </section>
    <StopList circuit={circuit.id} stops={view.stops} />
  </>);
}
