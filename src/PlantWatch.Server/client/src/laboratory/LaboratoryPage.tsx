import type { Measurand } from '../contract';
import type { LabPoolView, LabResultView, LabView } from '../contract.laboratory';
import { decimalsOf, fixed, plain, unitText } from '../format/number';
import { dayClock } from '../format/zone';
import { zone } from '../live/store';
import { TickGlyph, WarnGlyph } from '../parts/Glyph';
import { usePolled } from '../parts/usePolled';
import { route } from '../router';
import { words } from '../words';
import { CloseResult } from './CloseResult';
import { ResultForm } from './ResultForm';

const w = words.laboratory;
const say = (v: number) => plain(Math.round(v * 100) / 100);

function Counts({ result }: { result: LabResultView }) {
  return (
    <ul class="lab-counts">{result.counts.map(c => (
      <li key={c.organism} class={c.open ? 'lab-open' : ''} data-testid={`count-${c.organism}`} data-verdict={c.verdict}>
        <span><i>{c.name}</i> <b>{c.sense === 'not_detected' ? w.nd : `${c.sense === 'counted' ? '' : w.senses[c.sense] + '\u202f'}${say(c.count)}`}</b> <span class="hint">{w.volume} {say(c.millilitres)} mL</span></span>
        <span class="mark">{c.verdict === 'inside' ? <TickGlyph /> : c.verdict === 'outside' ? <WarnGlyph /> : null}<span>{w.verdict[c.verdict]}{c.high !== null && `, ${w.limit(say(c.high), say(c.basisMillilitres))}`}</span></span>
      </li>))}</ul>
  );
}

function Water({ result }: { result: LabResultView }) {
  if (result.water.length === 0) return <p class="hint">{w.noWater}</p>;
  return <ul class="lab-water">{result.water.map(v => <li key={v.measurand + (v.probeId ?? '')}><span class="label">{v.name}</span> <b>{fixed(v.value, decimalsOf(v.measurand as Measurand))}{unitText(v.unit) && '\u00a0' + unitText(v.unit)}</b> <span class="hint">{v.probeId ? w.probe : `${w.test} ${dayClock(v.at, zone.value)}`}</span></li>)}</ul>;
}

function Result({ result, pool, onDone }: { result: LabResultView; pool: string; onDone: () => void }) {
  return (
    <li class={`lab-result ${result.open ? 'is-open' : ''}`} data-testid="lab-result" data-open={result.open}>
      <h3>{pool} {'\u00b7'} {result.place ?? w.points[result.point] ?? result.point}</h3>
      <p class="hint">{w.sampled} {dayClock(result.sampledAt, zone.value)} {'\u00b7'} {w.reported} {dayClock(result.reportedAt, zone.value)} {'\u00b7'} {result.laboratory}, {w.number} {result.sampleNumber} {'\u00b7'} {w.by} {result.by}</p>
      {result.open && <p class="mark"><WarnGlyph /><b>{w.open}</b></p>}
      {result.closedAt && <p>{w.closed(result.closedBy ?? '', dayClock(result.closedAt, zone.value))}: {result.closedWhy}</p>}
      {result.correctedBy && <p class="hint">{w.corrected}</p>}
      <Counts result={result} />
      <h4 class="label">{w.water}</h4>
      <Water result={result} />
      {result.note && <p class="pre">{result.note}</p>}
      {result.open && <CloseResult id={result.id} onDone={onDone} />}
    </li>
  );
}

function Pool({ pool }: { pool: LabPoolView }) {
  return (
    <li class="lab-pool"><b>{pool.name}</b>
      {pool.limits.length === 0 ? <span>{w.noLimits}</span> : <ul class="plain">{pool.limits.map(l => <li key={l.organism}><i>{l.name}</i>: {w.per(say(l.high), say(l.millilitres))} <span class="hint">{l.source}</span></li>)}</ul>}
      <span class="hint">{pool.everyDays === null ? w.notPlanned : w.planned(say(pool.everyDays))}{pool.sampleDue && `; ${w.due(dayClock(pool.sampleDue, zone.value))}`}</span>
      {pool.resampleDue && <span class="mark"><WarnGlyph /><b>{w.resample(dayClock(pool.resampleDue, zone.value))}</b></span>}
    </li>
  );
}

export function LaboratoryPage() {
  const { data, failed, reload } = usePolled<LabView>('/laboratory', 60_000);
  const wanted = route.value[1] ?? null;
  if (data === null) return <p class="hint">{failed ? words.error.unreachable : words.loading}</p>;
  const name = (id: string) => data.pools.find(p => p.poolId === id)?.name ?? id;
  const results = data.results.filter(r => wanted === null || r.poolId === wanted);
  return (
    <div class="pages stack">
      <h1>{w.title}</h1>
      <p>{w.lead}</p>
      <ResultForm pools={data.pools} wanted={wanted} onDone={reload} />
      <section class="sheet card"><h2>{w.inForce}</h2><ul class="lab-pools">{data.pools.filter(p => wanted === null || p.poolId === wanted).map(p => <Pool key={p.poolId} pool={p} />)}</ul></section>
      {results.length === 0 ? <p class="hint">{w.none}</p> : <ul class="lab-results">{results.map(r => <Result key={r.id} result={r} pool={name(r.poolId)} onDone={reload} />)}</ul>}
      <section class="sheet card"><h2>{w.sampling}</h2><ul class="plain">{w.facts.map(f => <li key={f}>{f}</li>)}</ul></section>
    </div>
  );
}
