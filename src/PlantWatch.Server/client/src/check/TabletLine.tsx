import type { Measurand } from '../contract';
import { fixed } from '../format/number';
import { serverNow } from '../live/clock';
import { words } from '../words';
import { draft, editRow, rowOf, type Row } from './draft';
import { tabletResult, tabletStep, usualSample } from './methods';

/** A count of tablets in a sample of any volume; the result appears in the field above as it is typed. */
export function TabletLine({ m }: { m: Measurand }) {
  const row = rowOf(draft.value, m);
  const count = (change: Partial<Row>) => {
    const result = tabletResult({ ...row, ...change });
    editRow(m, { ...change, ...(result === null ? {} : { text: String(result) }) }, serverNow());
  };
  const step = tabletStep(row);
  const wrong = step === null || ((row.tablets ?? '') !== '' && tabletResult(row) === null);
  return (
    <div class="result-line tablets">
      <label>{words.methods.tablets} <input class="short" type="text" inputMode="numeric" autocomplete="off" value={row.tablets ?? ''} data-testid={'f-tablets-' + m}
        onInput={e => count({ tablets: e.currentTarget.value })} /></label>
      <label>{words.methods.sample} <input class="short" type="text" inputMode="decimal" autocomplete="off" value={row.sample ?? usualSample} data-testid={'f-sample-' + m}
        onInput={e => count({ sample: e.currentTarget.value })} /> {words.methods.millilitres}</label>
      <span class={wrong ? 'beyond' : 'hint'} role={wrong ? 'alert' : undefined}>{wrong ? words.methods.tabletsWrong : words.methods.counted(fixed(step, step! % 1 ? 1 : 0))}</span>
    </div>
  );
}
