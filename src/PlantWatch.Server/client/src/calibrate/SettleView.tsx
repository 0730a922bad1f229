import type { Settled } from '../contract.bench';
import { fixed } from '../format/number';
import { words } from '../words';

const w = words.calibrate;

/** What it reads now, whether that has come to rest, and by what measure: in sight while one waits. */
export function SettleView({ settled, decimals, unit, onTake }: { settled: Settled; decimals: number; unit: string; onTake: (value: number) => void }) {
  const share = settled.secondsNeeded > 0 ? Math.min(1, settled.seconds / settled.secondsNeeded) : 0;
  const value = `${fixed(settled.mean, decimals)} ${unit}`.trim();
  return (
    <div class={`settle ${settled.isSettled ? 'is-settled' : ''}`} data-testid="settle" data-settled={settled.isSettled} aria-live="polite">
      <div class="settle-top"><span class="figure">{value}</span><b>{settled.isSettled ? w.settled : w.wait}</b></div>
      <div class="settle-bar" aria-hidden="true"><span style={{ width: `${Math.round(100 * share)}%` }} /></div>
      <p class="hint">{settled.seconds < settled.secondsNeeded * 0.75 && !settled.isSettled ? w.collecting(String(Math.round(settled.seconds)), String(Math.round(settled.secondsNeeded))) : ''}
        {settled.span !== null && ' '}{settled.span !== null && w.settling(fixed(settled.span, decimals + 1), fixed(settled.mostSpan, decimals))}</p>
      {settled.isSettled && settled.mean !== null && <button type="button" class="primary" data-testid="take" onClick={() => onTake(settled.mean!)}>{w.take(value)}</button>}
    </div>
  );
}
