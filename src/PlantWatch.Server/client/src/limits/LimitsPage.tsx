import type { CircuitInfo } from '../contract';
import type { CircuitLimitsView } from '../contract.limits';
import { site } from '../live/store';
import { usePolled } from '../parts/usePolled';
import { words } from '../words';
import { CircuitLimits } from './CircuitLimits';
import { NoPack } from './NoPack';

const w = words.limits;

function Circuit({ circuit }: { circuit: CircuitInfo }) {
  const { data, failed, reload } = usePolled<CircuitLimitsView>(`/circuits/${encodeURIComponent(circuit.id)}/limits`, 60_000);
  if (!data) return <section class="sheet card unfilled"><h2>{circuit.name}</h2><p class="hint" role="status">{failed ? words.error.unreachable : w.loading}</p></section>;
  return data.pack ? <CircuitLimits circuit={circuit} view={data} pack={data.pack} reload={reload} /> : <NoPack circuit={circuit} view={data} />;
}

/** The picked pack of every circuit, row by row, for a person with the document in hand. */
export function LimitsPage() {
  if (!site.value) return <p class="empty">{words.overview.waiting}</p>;
  return (
    <div class="limits-page stack" data-testid="limits">
      <h1>{w.title}</h1>
      <p class="hint">{w.lead}</p>
      {site.value.circuits.map(c => <Circuit key={c.id} circuit={c} />)}
    </div>
  );
}
