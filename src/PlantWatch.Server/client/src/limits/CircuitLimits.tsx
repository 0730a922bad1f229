import { useState } from 'preact/hooks';
import type { Errors } from '../check/build';
import type { CircuitInfo } from '../contract';
import type { CircuitLimitsView, PackInfo } from '../contract.limits';
import { words } from '../words';
import { goTo, InHand } from './InHand';
import { PackRow } from './PackRow';
import { PoolBounds } from './PoolBounds';
import { StopList } from './StopList';
import { anchorOf, concerns, progressOf } from './rows';

const w = words.limits;

/** One circuit: its pack, how far it is confirmed, its rows, and what holds of it now. */
export function CircuitLimits({ circuit, view, pack, reload }: { circuit: CircuitInfo; view: CircuitLimitsView; pack: PackInfo; reload: () => void }) {
  const [only, setOnly] = useState(true);
  const [errors, setErrors] = useState<Errors>({});
  const { done, all } = progressOf(view.rows);
  const shown = only ? view.rows.filter(concerns) : view.rows;
  const missing = (found: Errors) => { setErrors(found); goTo(circuit.id, found); };
  const show = (row: string) => {
    setOnly(o => o && view.rows.some(r => r.id === row && concerns(r)));
    setTimeout(() => document.getElementById(anchorOf(circuit.id, row))?.focus(), 0);
  };
  return (
    <section class="stack" data-testid={`limits-${circuit.id}`} aria-labelledby={`limits-name-${circuit.id}`}>
      <div class="sheet card">
        <h2 id={`limits-name-${circuit.id}`}>{circuit.name}</h2>
        <p><b>{pack.authority}</b>, {pack.edition}</p>
        {pack.superseded && <p class="notice"><b>{w.superseded}</b>. {w.supersededMeans}</p>}
        <p role="status" data-testid={`progress-${circuit.id}`}>{all > 0 && done === all ? `${w.progress(done, all)}. ${w.allDone}` : w.progress(done, all)}</p>
        <progress class="pack-progress" max={Math.max(1, all)} value={done} aria-label={w.progress(done, all)} />
        <InHand circuit={circuit.id} may={view.mayConfirm} errors={errors} onTyped={field => setErrors(e => ({ ...e, [field]: '' }))} />
        <label class="choice-line"><input type="checkbox" checked={only} onChange={e => setOnly(e.currentTarget.checked)} data-testid={`only-${circuit.id}`} /> {w.filter} <span class="hint">{w.shown(shown.length, view.rows.length)}</span></label>
      </div>
      <div class="sheet card"><h2>{w.now}</h2>{view.pools.map(p => <PoolBounds key={p.pool} circuit={circuit} pool={p} rows={view.rows} onRow={show} />)}</div>
      <StopList circuit={circuit.id} stops={view.stops} />
      {shown.length === 0 && <p class="hint">{w.noneShown}</p>}
      <ol class="pack-rows">{shown.map(r => <PackRow key={r.id} circuit={circuit} row={r} onDone={reload} onInHand={missing} />)}</ol>
    </section>
  );
}
