import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { ageAt, span } from '../format/age';
import { now } from '../live/clock';
import { allPools } from '../live/store';
import { words } from '../words';
import { screenBefore, screensOf, type Round } from './round';
import { show, stopOf, unkept } from './store';

const w = words.round;

export const nameOfScreen = (screen: string): string => (({ sample: w.sample, around: w.around, look: w.look, answer: w.answer }) as Record<string, string>)[screen] ?? (words.measurand as Record<string, string>)[screen] ?? screen;

/** One screen of a round: where one is, one thing to do, and the way on under the thumb. */
export function Frame({ round, children, primary, onPrimary, second, backTo }: {
  round: Round; children: ComponentChildren; primary: string; onPrimary: () => void; second?: ComponentChildren; backTo?: boolean;
}) {
  const stop = stopOf(round), screens = screensOf(stop), before = screenBefore(stop, round.screen, round.mending);
  const head = useRef<HTMLHeadingElement>(null);
  // With the screen itself: who types at once would be thrown back.
  useLayoutEffect(() => { head.current?.focus({ preventScroll: true }); }, [round.screen, round.at]);
  const age = ageAt(now.value, stop.draft.whenExact);
  return (
    <section class="round" data-testid="round" data-screen={round.screen} data-pool={stop.draft.poolId}>
      <header class="round-head">
        <h1 ref={head} tabIndex={-1}>{nameOfScreen(round.screen)}</h1>
        <p class="hint"><b>{allPools.value.get(stop.draft.poolId)?.name ?? stop.draft.poolId}</b> {'\u00b7'} {w.progress(screens.indexOf(round.screen) + 1, screens.length)} {'\u00b7'} {round.who}{age !== null && stop.checkId === null && <> {'\u00b7'} <span data-testid="sample-age">{w.sampleAge(span(age))}</span></>}</p>
      </header>
      {unkept.value && <p class="notice bad" role="alert" data-testid="unkept">{w.unkept}</p>}
      {children}
      <div class="thumb">
        {backTo !== false && before && <button type="button" data-testid="round-back" onClick={() => show(before)}>{w.back}</button>}
        {second}
        <button type="button" class="primary" data-testid="round-next" onClick={onPrimary}>{primary}</button>
      </div>
    </section>
  );
}
