import { allPools } from '../live/store';
import { Remark } from '../parts/Field';
import { words } from '../words';

/** Which pools, any number of them. */
export function PoolPick({ picked, onPick, error }: { picked: string[]; onPick: (pools: string[]) => void; error?: string | undefined }) {
  return (
    <fieldset class={`field ${error ? 'wrong' : ''}`} data-testid="paper-pools" aria-describedby={error ? 'r-pools' : undefined}>
      <legend class="label">{words.paper.pools}</legend>
      <div class="choices">{[...allPools.value.values()].map(p => (
        <label key={p.id} class="choice"><input type="checkbox" checked={picked.includes(p.id)} data-testid={'paper-pool-' + p.id}
          onChange={e => onPick(e.currentTarget.checked ? [...picked, p.id] : picked.filter(id => id !== p.id))} /> {p.name}</label>))}</div>
      <Remark name="pools" text={error} />
    </fieldset>
  );
}
