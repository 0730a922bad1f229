import { AnswerView } from '../check/AnswerView';
import { resultOf } from '../check/build';
import { decimalsOf, fixed, unitOf } from '../format/number';
import { allPools, limitsOfPool } from '../live/store';
import { outcomes, keptChecks } from '../outbox/checks';
import { beyond, limitOf } from '../parts/beyond';
import { WarnGlyph } from '../parts/Glyph';
import { words } from '../words';
import { Frame } from './Frame';
import { combinedOf, type Round, type Stop } from './round';
import { setRound, stopOf } from './store';

const w = words.round;

/** What can be said without the server: held against the limits last heard of. Never that all is well. */
function WithoutServer({ stop }: { stop: Stop }) {
  const limits = limitsOfPool(stop.draft.poolId), c = combinedOf(stop);
  const found = [...stop.what.map(m => ({ m, value: resultOf(stop.draft, m) })), ...(c.kind === 'value' ? [{ m: 'combined_chlorine' as const, value: c.value }] : [])].filter(x => x.value !== null);
  const out = found.map(x => ({ ...x, says: beyond(x.value, limitOf(limits, x.m)) })).filter(x => x.says !== null);
  const low = out.some(x => (x.m === 'free_chlorine' || x.m === 'bromine') && x.value! < (limitOf(limits, x.m)?.low ?? 0));
  return (
    <section class="sheet card" data-testid="held-here" data-out={out.length}>
      <p>{w.offline} {limits.length === 0 ? w.noLimits : out.length === 0 ? w.inside : w.outside}</p>
      {out.length > 0 && <ul class="why">{out.map(x => <li key={x.m}><span class="mark"><WarnGlyph /><b>{words.measurand[x.m]} {fixed(x.value, decimalsOf(x.m))} {unitOf(x.m)}</b></span> {x.says}</li>)}</ul>}
      {low && <p><b>{w.doLow}</b></p>}
      {out.length > 0 && <p>{w.doFirst}</p>}
    </section>
  );
}

/** What became of the check, and the way to the next pool. */
export function AnswerScreen({ round }: { round: Round }) {
  const stop = stopOf(round), outcome = stop.checkId ? outcomes.value.get(stop.checkId) : undefined;
  const waits = keptChecks.value.some(i => i.id === stop.checkId && !i.refusal);
  const refused = outcome?.kind === 'refused' ? outcome.problem : keptChecks.value.find(i => i.id === stop.checkId)?.refusal;
  const next = round.stops.findIndex((s, i) => i > round.at && s.checkId === null);
  const on = () => { setRound(next < 0 ? null : { ...round, at: next, screen: 'sample' }); scrollTo(0, 0); };
  // After a reload this page has heard nothing: what no longer waits has been answered for.
  const shown = outcome ?? (waits ? { kind: 'unreachable' as const } : undefined);
  return (
    <Frame round={round} backTo={false} primary={next < 0 ? w.finish : w.nextPool(allPools.value.get(round.stops[next]!.draft.poolId)?.name ?? '')} onPrimary={on}>
      {refused ? <p class="notice bad" role="alert" data-testid="round-refused">{words.answer.refused}. {refused.errors.map(e => e.text).join(' ') || refused.title} <a href="#/check">{words.outbox.edit}</a></p>
        : shown || !stop.checkId ? <AnswerView outcome={shown} /> : <p class="sheet card">{words.answer.arrived}</p>}
      {shown?.kind === 'unreachable' && <WithoutServer stop={stop} />}
    </Frame>
  );
}
