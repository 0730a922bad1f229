import type { DoseProductView, DoseTargetView } from '../contract.dose';
import { decimalsOf, fixed, unitOf } from '../format/number';
import { Age } from '../parts/Age';
import { Field, tie } from '../parts/Field';
import { WarnGlyph } from '../parts/Glyph';
import { words } from '../words';

export interface Asked { product: string; target: string; value: string; clear: boolean | null; closed: boolean }

/** Product, figure and target; and what only a person at the pool can say. */
export function DoseAsk({ products, asked, target, suggestion, held, set, wrong }: {
  products: DoseProductView[]; asked: Asked; target: DoseTargetView | undefined; suggestion: string; held: boolean; set: (next: Asked) => void; wrong: boolean;
}) {
  const w = words.dose;
  const product = products.find(p => p.id === asked.product);
  const change = (part: Partial<Asked>) => set({ ...asked, ...part });
  if (products.length === 0) return <section class="sheet card"><p class="hint">{w.noProducts}</p></section>;
  return (
    <section class="sheet card dose-ask">
      <h2>{w.ask}</h2>
      <Field name="product" label={w.product}>
        <select class="tall" value={asked.product} {...tie('product')} onChange={e => change({ product: e.currentTarget.value, target: '', value: '' })}>
          <option value="">{w.choose}</option>
          {products.map(p => <option key={p.id} value={p.id}>{p.name}{p.unfit.length > 0 ? ` (${w.unfit})` : ''}</option>)}
        </select>
      </Field>
      {product && product.targets.length === 0 && <p class="mark" data-testid="no-use"><WarnGlyph /><span>{product.unfit[0]?.text ?? w.noUse}</span></p>}
      {product && product.targets.length > 1 && (
        <Field name="target" label={w.target} group>
          <div class="choices">{product.targets.map(t => (
            <label key={t.measurand} class="choice"><input type="radio" name="dose-target" checked={t.measurand === target?.measurand} data-testid={'target-' + t.measurand} onChange={() => change({ target: t.measurand, value: '' })} />
              {(t.direction > 0 ? w.raise : w.lower)(words.measurand[t.measurand] ?? t.measurand)}</label>))}</div>
        </Field>)}
      {target && <>
        <Field name="value" label={product!.targets.length > 1 ? w.value : w.valueOf((target.direction > 0 ? w.raise : w.lower)(words.measurand[target.measurand] ?? target.measurand))} error={wrong ? w.notNumber : undefined}
          hint={<TestedAt target={target} />}>
          <span class="set-number wide"><input type="text" inputMode="decimal" autocomplete="off" value={asked.value} placeholder={suggestion} {...tie('value', wrong ? w.notNumber : undefined)}
            onInput={e => change({ value: e.currentTarget.value })} /><span class="unit">{unitOf(target.measurand)}</span></span>
        </Field>
        {product!.byPump ? <p class="hint">{w.byPump}</p> : (
          <Field name="bathers" label={w.bathers} group>
            <div class="choices">{([true, false] as const).map(clear => (
              <label key={String(clear)} class="choice"><input type="radio" name="dose-clear" checked={asked.clear === clear} data-testid={clear ? 'clear-yes' : 'clear-no'} onChange={() => change({ clear })} />{clear ? w.clear : w.notClear}</label>))}</div>
          </Field>)}
        {target.measurand === 'free_chlorine' && !held && (
          <label class="choice"><input type="checkbox" checked={asked.closed} data-testid="closed" onChange={e => change({ closed: e.currentTarget.checked })} />{w.closed}</label>)}
      </>}
    </section>
  );
}

function TestedAt({ target }: { target: DoseTargetView }) {
  const d = decimalsOf(target.measurand);
  const unit = unitOf(target.measurand);
  return (
    <>{target.now === null ? words.dose.notTested : <>{words.dose.now(`${fixed(target.now, d)}${unit && '\u00a0' + unit}`)}, <Age at={target.testedAt} /></>}
      {(target.low !== null || target.high !== null) && <>{'. '}{words.dose.limits(fixed(target.low, d), fixed(target.high, d))}</>}</>
  );
}
