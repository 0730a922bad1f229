import { useEffect, useRef, useState } from 'preact/hooks';
import { put } from '../api/http';
import type { StockAct, StockBookView, StockMoveView } from '../contract.stock';
import { uuid7 } from '../format/uuid7';
import { fromField, toField } from '../format/zone';
import { serverNow } from '../live/clock';
import { allPumps, site, zone } from '../live/store';
import { PriorityGlyph } from '../parts/Glyph';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { words } from '../words';
import { isWrong, requestOf, store, wrongOf, type Draft } from './draft';

const w = words.chemicals;
const paths: Record<StockAct, string> = { unknown: '', delivered: 'deliveries', refilled: 'refills', counted: 'stock-counts' };
const shown = ['productId', 'pumpId', 'amount', 'containers', 'strength', 'batch', 'madeOn', 'price', 'happenedAt', 'by', 'checkedBy', 'wentIn'];
const blank = (place: string): Draft => ({ productId: '', place, amount: '', containers: '', strength: '', batch: '', madeOn: '', price: '', when: toField(serverNow(), zone.peek()), checkedBy: '', note: '', wentIn: false });

/** A delivery, a refill or a count. Product and tank are held against each other while they are chosen: afterwards it is too late. */
export function MoveForm({ act, book, onDone, onLeave }: { act: StockAct; book: StockBookView; onDone: (text: string) => void; onLeave: () => void }) {
  // The id is made once: sent again after a lost answer it is the same row.
  const [id] = useState(uuid7);
  const [d, setDraft] = useState<Draft>(() => blank(act === 'counted' ? store : ''));
  const set = (change: Partial<Draft>) => setDraft(old => ({ ...old, ...change, ...('productId' in change || 'place' in change ? { wentIn: false } : {}) }));
  const { busy, errors, run, setErrors } = useAction<StockMoveView>(() => onDone(w.kept[act]));
  const top = useRef<HTMLFormElement>(null);
  useEffect(() => top.current?.scrollIntoView({ block: 'start' }), []);
  const products = site.value?.products ?? [], pumps = [...allPumps.value.values()], product = book.products.find(p => p.id === d.productId);
  // Pumps of two circuits may have one name.
  const tankName = (id: string, name: string) => { const c = site.value?.circuits ?? []; return c.length < 2 ? name : `${name}, ${c.find(x => x.pumps.some(p => p.id === id))?.name ?? ''}`; };
  const nameOf = (pump: { productId: string; productName: string }) => products.find(p => p.id === pump.productId)?.name ?? pump.productName;
  const wrong = isWrong(act, d, products, pumps), unit = d.place !== store && d.place !== '' ? 'litre' : product?.unit ?? 'litre';
  const places = act === 'counted' ? pumps.filter(p => p.productId === d.productId) : pumps;
  const submit = () => {
    const at = fromField(d.when, zone.value), found = wrongOf(act, d, who.value, at);
    if (wrong && !d.wentIn) found['wentIn'] = w.wentInNeed;
    if (Object.keys(found).length) return setErrors(found);
    void run(() => put(`/${paths[act]}/${id}`, requestOf(d, who.value, at!, product?.unit ?? 'litre')));
  };
  const text = (name: 'amount' | 'containers' | 'strength' | 'price' | 'batch', label: string, mode: 'decimal' | 'numeric' | 'text') => (
    <Field name={name} label={label} error={errors[name]}><input type="text" inputmode={mode} autocomplete="off" value={d[name]} {...tie(name, errors[name])} onInput={e => set({ [name]: e.currentTarget.value })} /></Field>);
  return (
    <form ref={top} class="sheet card action come-to" noValidate onSubmit={e => { e.preventDefault(); submit(); }} data-testid={`form-${act}`}>
      <h2>{w.heads[act]}</h2>
      <p class={act === 'counted' ? 'hint' : 'notice'}>{act === 'counted' ? w.countHint : w.aloud}</p>
      <Field name="productId" label={w.productLabel} error={errors['productId']}>
        <select value={d.productId} {...tie('productId', errors['productId'])} onChange={e => set({ productId: e.currentTarget.value, ...(act === 'counted' ? { place: store } : {}) })}><option value="" />{book.products.map(p => <option key={p.id} value={p.id}>{p.name}</option>)}</select></Field>
      <Field name="pumpId" label={act === 'counted' ? w.whereCounted : w.where} error={errors['pumpId']}>
        <select value={d.place} {...tie('pumpId', errors['pumpId'])} onChange={e => set({ place: e.currentTarget.value })}>
          {act !== 'counted' && <option value="" />}{act !== 'refilled' && <option value={store}>{act === 'counted' ? w.ofStore : w.inStore}</option>}
          {places.map(p => <option key={p.id} value={p.id}>{w.tankFor(tankName(p.id, p.name), nameOf(p))}</option>)}</select></Field>
      {wrong && (
        <div class="notice bad" role="alert" data-testid="wrong-tank"><p class="mark"><PriorityGlyph priority="critical" /><span>{w.stop(wrong.product.name, tankName(wrong.tank.id, wrong.tank.name), nameOf(wrong.tank))}</span></p>
          <p>{w.wentInFirst}</p>
          <label class="choice"><input type="checkbox" checked={d.wentIn} data-testid="went-in" onChange={e => set({ wentIn: e.currentTarget.checked })} />{w.wentIn}</label></div>)}
      {errors['wentIn'] && !d.wentIn && <p class="remark" data-testid="error-wentIn">{errors['wentIn']}</p>}
      {text('amount', w.amountLabel(w.units[unit]), 'decimal')}
      {act === 'delivered' && text('containers', w.containers, 'numeric')}
      {act !== 'counted' && (
        <>{text('strength', w.strengthLabel, 'decimal')}{text('batch', w.batchLabel, 'text')}
          <Field name="madeOn" label={w.madeOn} error={errors['madeOn']}><input type="date" class="tall" value={d.madeOn} {...tie('madeOn', errors['madeOn'])} onInput={e => set({ madeOn: e.currentTarget.value })} /></Field>
          {act === 'delivered' && text('price', w.priceLabel, 'decimal')}</>)}
      <Field name="happenedAt" label={w.when} error={errors['happenedAt']}><input type="datetime-local" class="tall" value={d.when} {...tie('happenedAt', errors['happenedAt'])} onInput={e => set({ when: e.currentTarget.value })} /></Field>
      <NameField name="move-by" label={act === 'delivered' ? w.received : act === 'refilled' ? w.filled : w.counted} error={errors['by']} />
      {act !== 'counted' && <Field name="checkedBy" label={w.checked} hint={w.checkedHint} error={errors['checkedBy']}><input type="text" autocomplete="off" value={d.checkedBy} {...tie('checkedBy', errors['checkedBy'])} onInput={e => set({ checkedBy: e.currentTarget.value })} /></Field>}
      <Field name="move-note" label={w.note}><input type="text" value={d.note} {...tie('move-note')} onInput={e => set({ note: e.currentTarget.value })} /></Field>
      <OtherRemarks errors={errors} shown={shown} />
      <div class="inline"><button type="submit" class="primary" disabled={busy} data-testid="submit-move">{wrong && d.wentIn ? w.wentIn : w.save}</button><button type="button" onClick={onLeave}>{w.cancel}</button></div>
    </form>
  );
}
