import { useLayoutEffect, useRef } from 'preact/hooks';
import { AnswerView } from '../check/AnswerView';
import { resultOf } from '../check/build';
import { refusalOf } from '../check/fields';
import { mend } from '../check/mend';
import { decimalsOf, unitOf } from '../format/number';
import { outside } from '../limits/stops';
import { allPools, limitsOfPool } from '../live/store';
import { outcomes, keptChecks } from '../outbox/checks';
import { besideLimit, limitOf } from '../parts/beyond';
import { WarnGlyph } from '../parts/Glyph';
import { words } from '../words';
import { Frame } from './Frame';
import { combinedOf, type Round, type Stop } from './round';
import { setRound, stopOf } from './store';

const w = words.round;

/** What can be said without the server: held against the stops and limits last heard of. Never that all is well. */
function WithoutServer({ stop }: { stop: Stop }) {
  const { poolId } = stop.draft, limits = limitsOfPool(poolId), c = combinedOf(stop);
  const found = [...stop.what.map(m => ({ m, value: resultOf(stop.draft, m) })), ...(c.kind === 'value' ? [{ m: 'combined_chlorine' as const, value: c.value }] : [])].flatMap(x => x.value === null ? [] : [{ m: x.m, value: x.value }]);
  const out = found.flatMap(x => { const is = outside(poolId, x.m, x.value); return is === null ? [] : [{ ...x, ...is }]; });
  const stopped = out.some(x => x.stop !== null), low = out.some(x => (x.m === 'free_chlorine' || x.m === 'bromine') && (x.stop === 'low' || x.value < (limitOf(limits, x.m)?.low ?? 0)));
  return (
    <section class="sheet card" data-testid="held-here" data-out={out.length} data-stop={stopped}>
      <p>{w.offline} {out.length > 0 ? w.outside : limits.length === 0 ? w.noLimits : w.inside}</p>
      {out.length > 0 && <ul class="why">{out.map(x => <li key={x.m}><span class="mark"><WarnGlyph /><b>{words.measurand[x.m]} {besideLimit(x.value, limitOf(limits, x.m), decimalsOf(x.m))} {unitOf(x.m)}</b></span> {x.says}</li>)}</ul>}
      {stopped && <p><b>{w.stop.means}</b></p>}
      {low && <p><b>{w.doLow}</b></p>}
      {out.length > 0 && <p>{w.doFirst}</p>}
    </section>
  );
}

/** The server did not take it. Back in the form it leaves the round, which goes on. */
function Refused({ checkId, says, onMended }: { checkId: string | null; says: string; onMended: () => void }) {
  const item = keptChecks.value.find(i => i.id === checkId), host = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => host.current?.focus(), []);
  return (
    <div class="notice bad round-refused" ref={host} tabIndex={-1} role="alert" data-testid="round-refused"><p>{words.answer.refused}. {says}</p>
      {item && <button type="button" data-testid="round-mend" onClick={() => { if (mend(item)) onMended(); }}>{words.outbox.edit}</button>}</div>
  );
}

/** What became of the check, and the way to the next pool. */
export function AnswerScreen({ round }: { round: Round }) {
  const stop = stopOf(round), outcome = stop.checkId ? outcomes.value.get(stop.checkId) : undefined, item = keptChecks.value.find(i => i.id === stop.checkId);
  const waits = item !== undefined && !item.refusal;
  const refused = outcome?.kind === 'refused' ? outcome.problem : item?.refusal;
  const next = round.stops.findIndex((s, i) => i > round.at && s.checkId === null);
  const on = () => { setRound(next < 0 ? null : { ...round, at: next, screen: 'sample' }); scrollTo(0, 0); };
  // After a reload this page has heard nothing: what no longer waits has been answered for.
  const shown = outcome ?? (waits ? { kind: 'unreachable' as const } : undefined);
  return (
    <Frame round={round} backTo={false} primary={next < 0 ? w.finish : w.nextPool(allPools.value.get(round.stops[next]!.draft.poolId)?.name ?? '')} onPrimary={on}>
      {refused ? <Refused checkId={stop.checkId} says={item ? refusalOf(item.request, refused) : refused.title} onMended={on} />
        : shown || !stop.checkId ? <AnswerView outcome={shown} /> : <p class="sheet card">{words.answer.arrived}</p>}
      {shown?.kind === 'unreachable' && <WithoutServer stop={stop} />}
    </Frame>
  );
}
