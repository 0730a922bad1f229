import { useState } from 'preact/hooks';
import type { CellLook, Censoring, Measurand, TestMethod } from '../contract';
import { decimalsOf, fixed, unitOf } from '../format/number';
import { typedUnit } from '../format/units';
import { serverNow } from '../live/clock';
import { Remark, tie } from '../parts/Field';
import { ReagentHint } from '../reagents/ReagentHint';
import { words } from '../words';
import { resultOf, type Errors } from './build';
import { draft, editRow, mayDilute, methodsOf, rowOf } from './draft';
import { countsTablets, looksOf } from './methods';
import { TabletLine } from './TabletLine';

/** One result: bound, big number, unit; method beside the name; dilution and an odd colour when asked for; a count where tablets are counted. */
export function ResultRow({ m, errors }: { m: Measurand; errors: Errors }) {
  const row = rowOf(draft.value, m);
  const [asked, ask] = useState(false);
  const [odd, seen] = useState(false);
  const set = (change: Parameters<typeof editRow>[1]) => editRow(m, change, serverNow());
  const methods = methodsOf(m);
  const looks = looksOf(m, row);
  const looked = looks.length > 0 && (odd || (row.look ?? 'none') !== 'none');
  const diluted = asked || row.dilution !== '';
  const result = resultOf(draft.value, m);
  return (
    <div class={`field result ${errors[m] || errors['dilution-' + m] ? 'wrong' : ''}`}>
      <div class="result-head">
        <label class="label" for={'f-' + m}>{words.measurand[m]}</label>
        {looks.length > 0 && !looked && <button type="button" class="slim odd" onClick={() => seen(true)} data-testid={'odd-' + m}>{words.methods.odd}</button>}
        {methods.length > 1 ? (
          <select class="slim" value={row.method} aria-label={`${words.check.method}, ${words.measurand[m]}`} data-testid={'method-' + m}
            onChange={e => set({ method: e.currentTarget.value as TestMethod })}>
            {methods.map(x => <option key={x} value={x}>{words.method[x]}</option>)}
          </select>) : <span class="hint">{words.method[methods[0]!]}</span>}
      </div>
      <div class="result-line">
        <select class="bound" value={row.bound} aria-label={`${words.check.bound}, ${words.measurand[m]}`} data-testid={'bound-' + m}
          onChange={e => set({ bound: e.currentTarget.value as Censoring })}>
          <option value="none">{words.check.equals}</option><option value="below">{words.check.below}</option><option value="above">{words.check.above}</option>
        </select>
        <input class="big" type="text" inputMode="decimal" autocomplete="off" enterkeyhint="next" value={row.text} {...tie(m, errors[m])}
          onInput={e => set({ text: e.currentTarget.value })} />
        <span class="unit">{typedUnit(m)}</span>
        {mayDilute(m) && !diluted && <button type="button" class="slim" onClick={() => ask(true)} data-testid={'dilute-' + m}>{words.check.dilution}</button>}
      </div>
      {countsTablets(m, row) && <TabletLine m={m} />}
      {looked && (
        <div class="result-line">
          <select class="slim" value={row.look ?? 'none'} aria-label={`${words.methods.look}, ${words.measurand[m]}`} data-testid={'look-' + m}
            onChange={e => set({ look: e.currentTarget.value as CellLook })}>
            {looks.map(x => <option key={x} value={x}>{words.methods.looks[x]}</option>)}
          </select>
        </div>)}
      {diluted && (
        <div class="result-line dilution">
          <label for={'f-dilution-' + m}>{words.check.dilutionHint}</label>
          <input class="short" type="text" inputMode="decimal" autocomplete="off" value={row.dilution} {...tie('dilution-' + m, errors['dilution-' + m])}
            onInput={e => set({ dilution: e.currentTarget.value })} />
          {result !== null && row.dilution !== '' && <b>{words.check.result(`${fixed(result, decimalsOf(m))} ${unitOf(m)}`)}</b>}
        </div>)}
      <ReagentHint m={m} method={row.method} />
      <Remark name={m} text={errors[m]} />
      <Remark name={'dilution-' + m} text={errors['dilution-' + m]} />
    </div>
  );
}
