import { inOrder, standingAlarms } from '../alarms/order';
import { alarms, allPools, poolViews } from '../live/store';
import { PoolGlyph } from '../parts/Glyph';
import { link } from '../router';
import { words } from '../words';

/** What stands against the pool now, with what to do: a saved check must not read like a good one. Nothing while nothing does. */
export function PoolNow({ poolId }: { poolId: string }) {
  const state = poolViews.value.get(poolId)?.state;
  const open = inOrder(standingAlarms(alarms.value).filter(a => a.poolId === poolId && a.active));
  if (open.length === 0 || (state !== 'stop' && state !== 'alarm' && state !== 'attention')) return null;
  return (
    <article class={`sheet pool p-${state}`} data-testid="answer-pool" data-state={state}>
      <header class="state"><PoolGlyph state={state} /><h3><a href={link('pool', poolId)}>{allPools.value.get(poolId)?.name ?? poolId}</a></h3><span class="state-word">{words.pool[state]}</span></header>
      <ul class="why">{open.slice(0, 3).map(a => <li key={a.id}><b>{a.cause}</b><span class="block">{a.action}</span></li>)}
        {open.length > 3 && <li>{words.overview.more(open.length - 3)}</li>}</ul>
    </article>
  );
}
