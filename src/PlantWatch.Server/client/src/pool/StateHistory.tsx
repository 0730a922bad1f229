import { query } from '../api/http';
import type { PoolStateChangeView } from '../contract.poolState';
import { fullClock } from '../format/zone';
import { allPools, zone } from '../live/store';
import { usePolled } from '../parts/usePolled';
import { words } from '../words';

const w = words.poolState;

/** What the record says of opening and closing, newest first; of one pool, or of all with their names. */
export function StateHistory({ poolId }: { poolId?: string }) {
  const { data, failed } = usePolled<PoolStateChangeView[]>('/pool-states' + query({ pool: poolId }), 30_000);
  if (data === null) return <p class="hint">{failed ? words.error.unreachable : words.loading}</p>;
  if (data.length === 0) return <p class="hint" data-testid="no-state-history">{w.noHistory}</p>;
  return (
    <ul class="history" data-testid="state-history">{data.map(c => (
      <li key={`${c.poolId} ${c.at}`} data-testid={`state-change-${c.state}`}><span class="hint">{fullClock(c.at, zone.value)}</span>
        <span>{poolId === undefined && <b>{allPools.value.get(c.poolId)?.name ?? c.poolId}: </b>}{w.change(w.states[c.before], w.states[c.state])}{c.forCause && `, ${w.forCause}`}{c.byIncident && `, ${w.byIncident}`}{c.refilled && `, ${w.newWater}`}{c.by && `, ${w.by(c.by)}`}
          {c.why && <span class="block pre">{c.why}</span>}</span></li>))}</ul>
  );
}
