import { DueProbes } from '../calibrate/DueProbes';
import type { PoolInfo, ProbeInfo } from '../contract';
import { LimitsLine } from '../limits/LimitsLine';
import { circuitOfPool, headingOf, limitsOfPool, poolViews, probesOfPool } from '../live/store';
import { limitOf, limitText } from '../parts/beyond';
import { PoolGlyph } from '../parts/Glyph';
import { LiveValue } from '../parts/LiveValue';
import { Spark } from '../parts/Spark';
import { StandingMark } from '../parts/StandingMark';
import { link } from '../router';
import { words } from '../words';
import { AlarmLine } from './AlarmLine';
import { DueLine } from './DueLine';
import { TestCells } from './TestCells';
import { Why } from './Why';

function ProbeRow({ probe, heading, pool, owner }: { probe: ProbeInfo; heading: string; pool: PoolInfo; owner: boolean }) {
  const limit = limitOf(limitsOfPool(pool.id), probe.measurand);
  return (
    <li class="probe-row">
      <a class="probe-name" href={link('probe', probe.id)}>
        <span class="label">{heading}</span>
        <StandingMark probeId={probe.id} testId={owner} />
      </a>
      <LiveValue probe={probe} limit={limit} testId={owner} />
      <div class="spark-box">
        {probe.measurand !== 'sample_flow' && <Spark probe={probe} limit={limit} />}
        {limit && <span class="under">{limitText(limit)}</span>}
      </div>
    </li>
  );
}

/** One pool on one sheet: what it is, why, what is measured, what was tested, what is due. */
export function PoolCard({ pool }: { pool: PoolInfo }) {
  const view = poolViews.value.get(pool.id);
  const state = view?.state ?? 'unknown';
  const probes = probesOfPool(pool.id);
  // A probe of the common return stands on every card of its circuit; the first card owns it.
  const first = circuitOfPool(pool.id)?.pools[0]?.id === pool.id;
  return (
    <article class={`sheet pool p-${state}`} data-testid={`pool-${pool.id}`} data-state={state} aria-labelledby={`name-${pool.id}`}>
      <header class="state">
        <PoolGlyph state={state} />
        <h2 id={`name-${pool.id}`}><a href={link('pool', pool.id)}>{pool.name}</a></h2>
        <span class="state-word" data-testid={`state-${pool.id}`}>{words.pool[state]}</span>
      </header>
      {view?.operation && view.operation.state !== 'not_stated' && <p class="hint run-as" data-testid={`operation-${pool.id}`}>{words.poolState.states[view.operation.state]}{view.operation.forCause && `, ${words.poolState.forCause}`}</p>}
      <Why pool={pool} view={view} />
      <LimitsLine view={view} />
      <ul class="probe-rows">
        {probes.map(p => <ProbeRow key={p.id} probe={p} heading={headingOf(p, probes)} pool={pool} owner={p.poolId !== null || first} />)}
      </ul>
      {view && <TestCells pool={pool} view={view} />}
      <AlarmLine pool={pool} />
      {view && <DueLine due={view.due} />}
      <DueProbes poolId={pool.id} />
      <footer class="card-foot">
        <a class="button" href={link('check', pool.id)}>{words.overview.check}</a>
        <a class="button quiet" href={link('pool', pool.id)}>{words.overview.open}</a>
      </footer>
    </article>
  );
}
