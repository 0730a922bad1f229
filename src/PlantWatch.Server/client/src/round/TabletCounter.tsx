import type { Measurand } from '../contract';
import type { Row } from '../check/draft';
import { tabletResult, tabletStep, usualSample } from '../check/methods';
import { fixed } from '../format/number';
import { words } from '../words';
import { editRow } from './store';

const w = words.round.count;
const samples = ['50', '100', '200'];

/** Tablets counted by a button that a wet thumb finds. */
export function TabletCounter({ m, row }: { m: Measurand; row: Row }) {
  const n = Number(row.tablets ?? 0) || 0;
  const set = (change: Partial<Row>) => {
    const next = { ...row, ...change }, result = tabletResult(next);
    editRow(m, { ...change, text: result === null ? '' : String(result) });
  };
  const count = (to: number) => { navigator.vibrate?.(to > n ? 40 : [20, 40, 20]); set({ tablets: to > 0 ? String(to) : '' }); };
  const step = tabletStep(row), result = tabletResult(row);
  return (
    <div class="sheet card counter" data-testid="counter" data-count={n}>
      <p class="big-clock" role="status"><b>{n}</b> <span>{n === 0 ? w.none : result !== null && w.result(fixed(result, result % 1 ? 1 : 0))}</span></p>
      <button type="button" class="broad count-one" data-testid="count-one" disabled={n >= 100} onClick={() => count(n + 1)}>{w.one}</button>
      <button type="button" class="broad" data-testid="count-undo" disabled={n === 0} onClick={() => count(n - 1)}>{w.undo}</button>
      <fieldset class="field"><legend class="label">{w.sample}{step !== null && `, ${w.step(fixed(step, step % 1 ? 1 : 0))}`}</legend>
        <div class="choices">{samples.map(s => <label key={s} class="choice"><input type="radio" name="tablet-sample" checked={(row.sample ?? usualSample) === s} data-testid={`sample-${s}`} onChange={() => set({ sample: s })} />{s} mL</label>)}</div></fieldset>
    </div>
  );
}
