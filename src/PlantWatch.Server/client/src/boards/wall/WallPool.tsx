import type { Measurand, PoolInfo } from '../../contract';
import { headingOf, limitsOfPool, poolViews, probesOfPool } from '../../live/store';
import { TestCells } from '../../overview/TestCells';
import { Why } from '../../overview/Why';
import { limitOf } from '../../parts/beyond';
import { PoolGlyph } from '../../parts/Glyph';
import { LiveValue } from '../../parts/LiveValue';
import { StandingMark } from '../../parts/StandingMark';
import { words } from '../../words';

/** What is read from afar; the rest stands on the pages of the pool. */
const ofWater: Measurand[] = ['ph', 'free_chlorine', 'bromine', 'orp', 'temperature'];

/** A pool as seen from afar: its state in a word, why, and its figures with their age. */
export function WallPool({ pool }: { pool: PoolInfo }) {
  const view = poolViews.value.get(pool.id), state = view?.state ?? 'unknown';
  const probes = probesOfPool(pool.id).filter(p => ofWater.includes(p.measurand));
  return (
    <article class={`sheet pool p-${state}`} data-testid={`pool-${pool.id}`} data-state={state} aria-labelledby={`name-${pool.id}`}>
      <header class="state"><PoolGlyph state={state} /><h3 id={`name-${pool.id}`}>{pool.name}</h3><span class="state-word" data-testid={`state-${pool.id}`}>{words.pool[state]}</span></header>
      <Why pool={pool} view={view} most={1} />
      <ul class="wall-figures">{probes.map(p => (
        <li key={p.id}><p class="wall-label"><span class="label">{headingOf(p, probes)}</span><StandingMark probeId={p.id} testId={false} /></p><LiveValue probe={p} limit={limitOf(limitsOfPool(pool.id), p.measurand)} testId={false} /></li>))}</ul>
      {view && <TestCells pool={pool} view={view} />}
    </article>
  );
}
