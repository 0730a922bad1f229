import { useState } from 'preact/hooks';
import type { Measurand, TestMethod } from '../contract';
import { now, serverNow } from '../live/clock';
import { unlock } from '../sound/speaker';
import { words } from '../words';
import { clockText, setStand, standOf } from './clocks';
import { guideOf } from './guides';
import { phaseOf, startTimer, type Stop } from './round';
import { editStop } from './store';

const w = words.round.clock;

/** The clock of one test: how long it stands, and within what it is read. */
export function TestClock({ stop, m, method }: { stop: Stop; m: Measurand; method: TestMethod }) {
  const guide = guideOf(m, method);
  const [stand, set] = useState(() => standOf(m, method));
  if (guide.stand === null) return null;
  const timer = stop.timers.find(t => t.m === m), read = stop.readAt[m] !== undefined;
  const phase = timer && !read ? phaseOf(timer, now.value) : null;
  const change = (by: number) => { setStand(m, method, stand + by); set(standOf(m, method)); };
  const start = () => { void unlock(); editStop(s => startTimer(s, m, serverNow(), stand)); };
  return (
    <div class={`sheet card test-clock ${phase ? 'k-' + phase.kind : ''}`} data-testid="test-clock" data-phase={phase?.kind ?? 'none'}>
      {phase && <p class="big-clock" role="timer" aria-live="off"><b>{phase.kind === 'done' ? w.done : `${phase.kind === 'late' ? '+' : ''}${clockText(phase.left)}`}</b> <span>{phase.kind === 'standing' ? w.standing : phase.kind === 'reading' ? w.readNow : phase.kind === 'late' ? w.late : ''}</span></p>}
      <p class="sr" role="status">{phase && phase.kind !== 'standing' ? (phase.kind === 'late' ? w.late : w.readNow) : ''}</p>
      <button type="button" class="broad" data-testid="start-clock" onClick={start}>{timer ? w.again : guide.stand === 0 ? w.dissolved : w.start}</button>
      {guide.stand > 0 && !phase && <div class="inline"><button type="button" class="slim" data-testid="stand-less" onClick={() => change(-15)}>{w.less}</button><span>{w.stands(clockText(stand))}</span><button type="button" class="slim" data-testid="stand-more" onClick={() => change(15)}>{w.more}</button></div>}
      {guide.window !== null && !phase && <p class="hint">{w.within(clockText(guide.window))}</p>}
      {guide.stand > 0 && !phase && <p class="hint">{w.usual}</p>}
    </div>
  );
}
