import { useState } from 'preact/hooks';
import { resultOf, dilutionOf } from '../check/build';
import { mayDilute, rowOf } from '../check/draft';
import type { Measurand } from '../contract';
import { decimalsOf, fixed, unitOf } from '../format/number';
import { Remark } from '../parts/Field';
import { words } from '../words';
import type { Stop } from './round';
import { editRow } from './store';

const w = words.round.dilute;
const factors = ['2', '5', '10'];
const vial = 10;

/** One part of sample in so many: how to mix it, and what the reading then means. */
export function Dilute({ stop, m, asked, error }: { stop: Stop; m: Measurand; asked: boolean; error: string | undefined }) {
  const row = rowOf(stop.draft, m);
  const [opened, open] = useState(false);
  if (!mayDilute(m) || row.method === 'tablet_count' || row.method === 'meter') return null;
  if (!asked && !opened && row.dilution === '') return <button type="button" class="slim" data-testid="dilute" onClick={() => open(true)}>{w.open}</button>;
  const n = dilutionOf(row.dilution), result = resultOf(stop.draft, m);
  return (
    <div class="sheet card" data-testid="dilution">
      <fieldset class="field"><legend class="label">{w.title}</legend>
        <div class="choices">{['', ...factors].map(f => <label key={f} class="choice"><input type="radio" name="dilution" checked={row.dilution === f} data-testid={`dilute-${f || 'none'}`} onChange={() => editRow(m, { dilution: f })} />{f || w.none}</label>)}</div></fieldset>
      <label class="inline">{w.other} <input class="short" type="text" inputMode="decimal" autocomplete="off" value={row.dilution} data-testid="field-dilution" aria-invalid={error ? true : undefined} aria-describedby={error ? `r-dilution-${m}` : undefined} onInput={e => editRow(m, { dilution: e.currentTarget.value })} /></label>
      <Remark name={'dilution-' + m} text={error} />
      {n !== null && n > 1 && <>
        <p>{w.recipe(fixed(n, n % 1 ? 1 : 0), fixed(vial, 0), fixed(vial * n, 0))}</p>
        {result !== null && <p><b data-testid="diluted-result">{w.means(fixed(n, n % 1 ? 1 : 0), `${fixed(result, decimalsOf(m))} ${unitOf(m)}`)}</b></p>}
        <p class="hint">{w.doubt(fixed(n, n % 1 ? 1 : 0))}</p></>}
    </div>
  );
}
