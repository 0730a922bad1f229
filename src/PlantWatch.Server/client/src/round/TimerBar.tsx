import { now } from '../live/clock';
import { allPools } from '../live/store';
import { link, route } from '../router';
import { words } from '../words';
import { clockText, watchClocks } from './clocks';
import { phaseOf, running } from './round';
import { round } from './store';

const w = words.round.clock;

/** Clocks of tests that stand, on whatever page one is meanwhile. */
export function TimerBar() {
  watchClocks();
  const all = running(round.value);
  if (all.length === 0) return null;
  const here = route.value[0] === 'round';
  return (
    <div class="clocks" data-testid="clocks">
      {all.map(t => {
        const phase = phaseOf(t, now.value);
        return (
          <a key={t.poolId + t.m} class={`clock-line k-${phase.kind}`} href={link('round')} aria-current={here ? 'page' : undefined} data-testid={`clock-${t.m}`} data-phase={phase.kind}>
            <span>{allPools.value.get(t.poolId)?.name ?? t.poolId}, {words.measurand[t.m]}</span>
            <span class="clock-word">{phase.kind === 'standing' ? w.standing : phase.kind === 'reading' ? w.readNow : phase.kind === 'late' ? w.late : w.done}</span>
            {phase.kind !== 'done' && <b class="clock-figure" role="timer" aria-live="off">{phase.kind === 'late' ? '+' : ''}{clockText(phase.left)}</b>}
          </a>);
      })}
    </div>
  );
}
