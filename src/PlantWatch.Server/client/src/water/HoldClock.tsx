import type { ClockView } from '../contract.incident';
import { span } from '../format/age';
import { fixed } from '../format/number';
import { clock as timeOf, dayClock } from '../format/zone';
import { now } from '../live/clock';
import { zone } from '../live/store';
import { link } from '../router';
import { words } from '../words';
import { HoldStrip } from './HoldStrip';
import { HoldRowSaid } from './HoldTable';
import { amount, holdTime, plain, unitOfRow } from './incident';

const w = words.incident;

function Due({ at }: { at: string }) {
  const left = Date.parse(at) - now.value;
  return <dd class={left < 0 ? 'due-late' : ''}><b>{timeOf(at, zone.value)}</b> <span class="under">{left < 0 ? w.late(span(-left)) : w.inTime(span(left))}</span></dd>;
}

function Figures({ clock }: { clock: ClockView }) {
  const row = clock.row!;
  return (
    <>
      <div class="hold-figures">
        {clock.word !== 'reached' && (
          <div><span class="label">{w.left}</span><span class="figure" data-testid="hold-left">{clock.minutesLeft === null ? '\u2013' : holdTime(clock.minutesLeft)}</span>
            {clock.lastResidual !== null && <span class="under">{w.leftAt(plain(clock.lastResidual, 1))}</span>}</div>)}
        <div><span class="label">{w.done}</span><span class="figure small" data-testid="hold-done">{w.of(amount(row, clock.credited), amount(row, clock.required))}</span> <span class="unit">{unitOfRow(row)}</span></div>
      </div>
      <div class="hold-bar" role="progressbar" aria-label={w.done} aria-valuemin={0} aria-valuemax={100} aria-valuenow={Math.floor(clock.share * 100)}><span style={{ width: `${clock.share * 100}%` }} /></div>
      <dl class="hold-times">
        {clock.nextTestBy && <div><dt>{w.nextTest}</dt><Due at={clock.nextTestBy} /></div>}
        {clock.earliestEnd && <div><dt>{w.earliest}</dt><dd><b>{dayClock(clock.earliestEnd, zone.value)}</b> <span class="under">{w.earliestHint}</span></dd></div>}
        {clock.startedAt && <div><dt>{w.started}</dt><dd>{dayClock(clock.startedAt, zone.value)}</dd></div>}
        {clock.reachedAt && <div><dt>{w.reachedAt}</dt><dd><b>{dayClock(clock.reachedAt, zone.value)}</b></dd></div>}
      </dl>
      <HoldStrip clock={clock} />
    </>
  );
}

/** The clock of an incident in one pool: what the tests there prove, what is missing, when the next test is due. */
export function HoldClock({ poolId, name, clock, authority, cyanurate, said, testId }: {
  poolId: string; name: string | null; clock: ClockView; authority: string; cyanurate: number | null; said: string | undefined; testId: string;
}) {
  return (
    <section class={`sheet card hold h-${clock.word}`} data-testid={testId} data-word={clock.word} aria-live="polite">
      <div class="hold-head"><h2>{name && <span class="block label">{name}</span>}{w.word[clock.word]}</h2><a class="button" href={link('check', poolId)}>{w.enter}</a></div>
      {clock.why.map(said => <p key={said.code + said.text} class={clock.word === 'reached' ? 'hold-why done' : 'hold-why'} data-testid="hold-why">{said.text}</p>)}
      {clock.row && <Figures clock={clock} />}
      <p class="hint">{w.onlyTests} {said && <span data-testid={`said-${testId}`}>{said}.</span>}</p>
      {clock.row && <div><h3>{w.byFigures}: {authority}</h3><ul class="hold-rows"><HoldRowSaid row={clock.row} /></ul></div>}
      {cyanurate !== null && <p class="hint">{words.measurand.cyanuric_acid}: {fixed(cyanurate, 0)} mg/L</p>}
    </section>
  );
}
