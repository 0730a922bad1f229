import { DueProbes } from '../calibrate/DueProbes';
import { useMemo } from 'preact/hooks';
import { query } from '../api/http';
import type { CheckAnswer, CircuitInfo, Measurand, PoolInfo, ProbeInfo } from '../contract';
import { PoolExceptions } from '../exceptions/PoolExceptions';
import { fixed, plain } from '../format/number';
import { now } from '../live/clock';
import { alarms, allPools, circuitOfPool, limitsOfPool, poolViews, probesOfPool, site } from '../live/store';
import { AlarmRow } from '../alarms/AlarmRow';
import { inOrder } from '../alarms/order';
import { DueLine } from '../overview/DueLine';
import { Why } from '../overview/Why';
import { LimitsLine } from '../limits/LimitsLine';
import { PoolGlyph } from '../parts/Glyph';
import { usePolled } from '../parts/usePolled';
import { PumpCard } from '../pumps/PumpCard';
import { Missing } from '../parts/Missing';
import { link } from '../router';
import { TrustStory } from '../trust/TrustStory';
import { VolumeNote } from '../water/VolumeCard';
import { WaterNav } from '../water/WaterNav';
import { words } from '../words';
import { BalanceCard } from './BalanceCard';
import { CheckList } from './CheckList';
import { LazyStrips } from './LazyStrips';
import { ManualCard } from './ManualCard';
import { ProbeTable } from './ProbeTable';
import { StateCard } from './StateCard';

const fortnight = 14 * 86_400_000;

function Head({ pool, circuit }: { pool: PoolInfo; circuit: CircuitInfo | undefined }) {
  const view = poolViews.value.get(pool.id);
  const state = view?.state ?? 'unknown';
  const facts = [pool.kind, pool.setting, pool.disinfectant, ...pool.secondary].map(k => words.kinds[k]).filter(Boolean);
  return (
    <article class={`sheet pool p-${state}`} data-testid={`pool-${pool.id}`} data-state={state}>
      <header class="state"><PoolGlyph state={state} /><h1>{pool.name}</h1><span class="state-word" data-testid={`state-${pool.id}`}>{words.pool[state]}</span></header>
      <Why pool={pool} view={view} all />
      <LimitsLine view={view} page />
      {view && <DueLine due={view.due} />}
      <DueProbes poolId={pool.id} />
      <footer class="card-foot spread"><a class="button" href={link('check', pool.id)}>{words.overview.check}</a>
        <span class="hint">{facts.join(', ')}, {words.poolPage.volume(fixed(pool.volumeM3, 0))}{circuit?.turnoverHours != null && `, ${words.poolPage.turnover(plain(circuit.turnoverHours))}`}</span></footer>
    </article>
  );
}

/** What no probe of the pool measures and people test every day. */
function testsWithout(probes: ProbeInfo[], disinfectant: PoolInfo['disinfectant']): Measurand[] {
  const tests: Measurand[] = disinfectant === 'bromine' ? ['bromine'] : ['free_chlorine', 'combined_chlorine'];
  return tests.filter(m => !probes.some(p => p.measurand === m));
}

function Pool({ pool }: { pool: PoolInfo }) {
  const view = poolViews.value.get(pool.id);
  const circuit = circuitOfPool(pool.id);
  const probes = useMemo(() => probesOfPool(pool.id), [pool.id, site.value]);
  const tests = useMemo(() => testsWithout(probes, pool.disinfectant), [probes, pool.disinfectant]);
  const pumps = circuit?.pumps.filter(p => p.poolId === pool.id || p.poolId === null) ?? [];
  const subjects = new Set([pool.id, ...probes.map(p => p.id), ...pumps.map(p => p.id)]);
  const open = inOrder(alarms.value.filter(a => a.poolId === pool.id || subjects.has(a.subject)).filter(a => a.state !== 'normal'));
  const from = new Date(Math.floor((now.peek() - fortnight) / 86_400_000) * 86_400_000).toISOString();
  const checks = usePolled<CheckAnswer[]>('/checks' + query({ pool: pool.id, from }), 60_000);
  const fresh = `${view?.manual.map(m => m.checkId).join()}`;
  return (
    <>
      <WaterNav poolId={pool.id} here="pool" />
      <div class="pool-page">
        <div class="side">
          <Head pool={pool} circuit={circuit} />
          {view && <StateCard view={view} />}
          <PoolExceptions poolId={pool.id} />
          {open.length > 0 && <section class="sheet card"><h2>{words.poolPage.alarms}</h2><ul class="alarm-list">{open.map(a => <AlarmRow key={a.id} alarm={a} brief />)}</ul></section>}
          {probes.length > 0 && <TrustStory poolId={pool.id} />}
          {view && <ManualCard pool={pool} view={view} />}
          {view && <BalanceCard view={view} />}
          <VolumeNote poolId={pool.id} />
          {pumps.length > 0 && <section class="sheet card later"><h2>{words.poolPage.pumps}</h2><ul class="pump-list">{pumps.map(p => <PumpCard key={p.id} pump={p} small />)}</ul></section>}
        </div>
        <div class="wide">
          <LazyStrips key={pool.id} poolId={pool.id} probes={probes} limits={limitsOfPool(pool.id)} tests={tests} fresh={fresh} chart />
          <ProbeTable probes={probes} checks={checks.data ?? []} />
          <CheckList checks={checks.data} failed={checks.failed} />
        </div>
      </div>
    </>
  );
}

export function PoolPage({ id }: { id: string }) {
  const pool = allPools.value.get(id);
  if (pool) return <Pool key={id} pool={pool} />;
  return <Missing />;
}
