import { resultOf } from '../check/build';
import type { Measurand } from '../contract';
import { ageAt, span } from '../format/age';
import { decimalsOf, fixed, unitOf } from '../format/number';
import { asTyped, typedUnit } from '../format/units';
import { outside } from '../limits/stops';
import { now } from '../live/clock';
import { headingOf, poolViews, probeViews, probesOfPool, reading } from '../live/store';
import { WarnGlyph } from '../parts/Glyph';
import { words } from '../words';
import { quietWords, type Beside } from './plausible';
import type { Stop } from './round';

const w = words.round.quiet;

/** What is known beside the number that is being typed. The fresh believed value of a probe where there is one. */
function besideOf(poolId: string, m: Measurand): Beside {
  const last = poolViews.value.get(poolId)?.manual.find(x => x.measurand === m);
  const probes = probesOfPool(poolId), probe = probes.find(p => p.measurand === m && reading(p.id).value);
  const view = probe && probeViews.value.get(probe.id);
  return {
    last: last ? { value: last.value, at: Date.parse(last.sampledAt), suspect: last.suspect } : null,
    probe: probe && !view?.stale ? { name: headingOf(probe, probes), value: reading(probe.id).value!.v, believed: view?.believed?.value ?? null, u: view?.believed?.u ?? 0 } : null,
  };
}

/** Said while typing, beside the number, and never in the way. */
export function QuietWords({ stop, m }: { stop: Stop; m: Measurand }) {
  const value = resultOf(stop.draft, m), beside = besideOf(stop.draft.poolId, m), d = decimalsOf(m);
  const out = outside(stop.draft.poolId, m, value);
  const probe = beside.probe, said = quietWords(m, value, beside, now.value);
  // In the unit that is being typed; said only where that is not the usual one.
  const say = (si: number) => fixed(asTyped(m, si), d) + (typedUnit(m) === unitOf(m) ? '' : `\u00a0${typedUnit(m)}`);
  const shown = probe && say(probe.believed ?? probe.value);
  const age = span(ageAt(now.value, beside.last?.at) ?? 0);
  return (
    <div class="quiet-words" role="status" data-testid="quiet-words">
      {out && <p class="beyond" data-testid="beyond"><WarnGlyph />{out.says}</p>}
      {said.map(q => (
        <p key={q.kind} class={q.kind === 'far' || q.kind === 'probe_far' ? 'mark' : 'hint'} data-testid={`quiet-${q.kind}`}>{(q.kind === 'far' || q.kind === 'probe_far') && <WarnGlyph />}<span>
          {q.kind === 'last' ? w.last(say(beside.last!.value) + (beside.last!.suspect ? ` (${w.suspect})` : ''), age) : q.kind === 'far' ? w.far(say(beside.last!.value), age) : q.kind === 'probe' ? w.probe(probe!.name, shown!) : w.probeFar(probe!.name, shown!)}</span></p>))}
    </div>
  );
}
