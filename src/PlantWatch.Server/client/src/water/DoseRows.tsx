import type { Amount } from '../contract.units';
import type { WhatIfAmount, WhatIfProduct } from '../contract.whatIf';
import { fixed, readTyped } from '../format/number';
import { Remark, tie } from '../parts/Field';
import { focusOn } from './focusOn';
import { words } from '../words';

export interface DoseDraft { product: string; text: string }

/** Kilograms of a draft; null when it is no amount. An empty field is nothing put in. */
export function kilogramsOf(draft: DoseDraft): number | null {
  const read = readTyped(draft.text);
  return read.kind === 'empty' ? 0 : read.kind === 'number' && read.value >= 0 ? read.value : null;
}

const decimals = (scale: number) => scale >= 50 ? 1 : scale >= 5 ? 2 : 3;

const both = (amount: Amount) => amount.text === amount.inSi ? amount.text : `${amount.text} (${amount.inSi})`;

/** What the field does not say already: litres of a liquid, and the units of the plant. */
const saidOf = (amount: WhatIfAmount | undefined) => amount === undefined || amount.mass.value === 0 ? []
  : [amount.mass.text === amount.mass.inSi ? '' : amount.mass.text, amount.volume ? both(amount.volume) : ''];

function DoseRow({ product, draft, amount, error, set, remove }: { product: WhatIfProduct; draft: DoseDraft; amount: WhatIfAmount | undefined; error: string | undefined; set: (text: string) => void; remove: () => void }) {
  const kilograms = kilogramsOf(draft), scale = product.scaleKilograms, name = 'dose-' + product.id;
  return (
    <div class={`set-row moved ${error ? 'wrong' : ''}`} data-testid={name}>
      <label class="label" for={'f-' + name}>{product.name}</label>
      <span class="set-now"><button type="button" class="slim quiet-button" aria-label={words.whatIf.remove(product.name)} data-testid={'remove-' + product.id} onClick={remove}>{words.whatIf.removeShort}</button></span>
      <span class="set-number"><input type="text" inputMode="decimal" autocomplete="off" value={draft.text} aria-label={words.whatIf.amount(product.name)} {...tie(name, error)} onInput={e => set(e.currentTarget.value)} />
        <span class="unit">{words.whatIf.kilograms}</span></span>
      <input class="set-slider" type="range" min={0} max={Math.max(scale, kilograms ?? 0)} step={scale / 200} value={kilograms ?? 0} data-testid={'slider-' + name}
        aria-label={words.whatIf.slider(product.name)} aria-valuetext={`${fixed(kilograms, decimals(scale))} kg`} onInput={e => set(fixed(Number(e.currentTarget.value), decimals(scale)))} />
      <span class="hint set-note">{[...saidOf(amount), product.strength].filter(Boolean).join(' \u00b7 ')}</span>
      <Remark name={name} text={error} />
    </div>
  );
}

/** What is put in: a row a product, and a list to add one from. */
export function DoseRows({ products, doses, amounts, errors, set }: { products: WhatIfProduct[]; doses: DoseDraft[]; amounts: WhatIfAmount[]; errors: Record<string, string>; set: (doses: DoseDraft[]) => void }) {
  const left = products.filter(p => !doses.some(d => d.product === p.id));
  const group = (atHand: boolean, label: string) => {
    const some = left.filter(p => p.atHand === atHand);
    return some.length > 0 && <optgroup label={label}>{some.map(p => <option key={p.id} value={p.id}>{p.name}</option>)}</optgroup>;
  };
  return <>
    {doses.map((d, i) => {
      const product = products.find(p => p.id === d.product);
      return product && <DoseRow key={d.product} product={product} draft={d} amount={amounts.find(a => a.product === d.product)} error={errors['dose-' + d.product]}
        set={text => set(doses.map((x, n) => (n === i ? { ...x, text } : x)))} remove={() => { set(doses.filter((_, n) => n !== i)); focusOn('add-product'); }} />;
    })}
    {products.length === 0 ? <p class="hint">{words.whatIf.noProducts}</p> : left.length > 0 && (
      <div class="field"><label class="label" for="f-add-product">{words.whatIf.add}</label>
        <select id="f-add-product" class="tall" data-testid="add-product" value="" onChange={e => { const id = e.currentTarget.value; if (id) set([...doses, { product: id, text: '' }]); }}>
          <option value="">{words.whatIf.choose}</option>{group(true, words.whatIf.atHand)}{group(false, words.whatIf.others)}
        </select></div>)}
  </>;
}
