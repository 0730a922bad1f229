import { useEffect, useState } from 'preact/hooks';
import type { DoseAdviceView, DoseProductView, GivenDoseRequest, GivenDoseView } from '../contract.dose';
import { fixed, readTyped } from '../format/number';
import { doseUnits } from '../format/doseUnits';
import { units } from '../format/units';
import { uuid7 } from '../format/uuid7';
import { fromField, fullClock, toField } from '../format/zone';
import { now, serverNow } from '../live/clock';
import { zone } from '../live/store';
import { doseOutcomes, doses, flushDoses, keptDoses } from '../outbox/doses';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { WarnGlyph } from '../parts/Glyph';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { words } from '../words';

const w = words.dose;
interface Form { amount: string; unit: string; when: string; note: string; reason: string }
const empty: Form = { amount: '', unit: '', when: '', note: '', reason: '' };

/** What a person added, whether or not it was advised; works without a connection. */
export function GivenForm({ pool, products, chosen, advice, correcting, done }: {
  pool: string; products: DoseProductView[]; chosen: string; advice: DoseAdviceView | null; correcting: GivenDoseView | null; done: () => void;
}) {
  const [form, setForm] = useState<Form>(empty);
  const [errors, setErrors] = useState<Record<string, string>>({});
  const [sent, setSent] = useState<string | null>(null);
  const id = correcting?.dose.productId ?? chosen;
  const product = products.find(p => p.id === id);
  const offered = doseUnits(units.value, product?.density != null);
  const unit = offered.find(u => u.name === form.unit) ?? offered[0]!;
  const outcome = sent ? doseOutcomes.value.get(sent) : undefined;
  useEffect(() => { if (sent && outcome?.kind === 'answered') done(); }, [outcome]);
  const set = (part: Partial<Form>) => { setForm(f => ({ ...f, ...part })); setSent(null); };

  const submit = () => {
    const amount = readTyped(form.amount), at = form.when === '' ? serverNow() : fromField(form.when, zone.value);
    const missing: Record<string, string> = {};
    if (!product) missing['form'] = w.needProduct;
    if (amount.kind !== 'number' || amount.value <= 0) missing['amount'] = w.needAmount;
    if (at === null) missing['givenAt'] = w.needWhen;
    if (!who.value.trim()) missing['by'] = w.needBy;
    if (correcting && !form.reason.trim()) missing['correctionReason'] = w.needReason;
    setErrors(missing);
    if (Object.keys(missing).length > 0 || amount.kind !== 'number' || !product || at === null) return;
    const value = amount.value * unit.size;
    const request: GivenDoseRequest = {
      poolId: pool, productId: product.id, kilograms: unit.of === 'kg' ? value : null, litres: unit.of === 'L' ? value : null, givenAt: new Date(at).toISOString(),
      by: who.value.trim(), note: form.note.trim() || null, corrects: correcting?.dose.id ?? null, correctionReason: correcting ? form.reason.trim() : null,
    };
    const made = uuid7();
    try { doses.put(made, request, Date.now()); } catch { return setErrors({ form: words.check.storageFull }); }
    setSent(made);
    setForm(empty);
    void flushDoses();
  };

  const hint = advice?.dose && !correcting ? (unit.of === 'L' ? advice.dose.firstVolume : advice.dose.first) : null;
  return (
    <form class="sheet card given-form" noValidate onSubmit={e => { e.preventDefault(); submit(); }} data-testid="given-form">
      <h2>{correcting ? w.correcting(`${correcting.dose.product}, ${fullClock(correcting.dose.givenAt, zone.value)}`) : w.given}{product && !correcting ? `: ${product.name}` : ''}</h2>
      <p class="hint">{w.givenLead}</p>
      <div class="two">
        <Field name="amount" label={w.amount} error={errors['amount']}>
          <span class="inline"><input class="tall" type="text" inputMode="decimal" autocomplete="off" placeholder={hint ? fixed(hint.value / unit.size, 2) : ''} value={form.amount} {...tie('amount', errors['amount'])} onInput={e => set({ amount: e.currentTarget.value })} />
            <select value={unit.name} aria-label={w.unitChoice} data-testid="amount-unit" onChange={e => set({ unit: e.currentTarget.value })}>{offered.map(u => <option key={u.name} value={u.name}>{u.name}</option>)}</select></span>
        </Field>
        <Field name="givenAt" label={w.when} error={errors['givenAt']}>
          <input class="tall" type="datetime-local" value={form.when || toField(now.value, zone.value)} {...tie('givenAt', errors['givenAt'])} onInput={e => set({ when: e.currentTarget.value })} />
        </Field>
        <NameField name="by" label={w.by} error={errors['by']} />
        <Field name="note" label={w.note}><input class="tall" type="text" value={form.note} {...tie('note')} onInput={e => set({ note: e.currentTarget.value })} /></Field>
        {correcting && <Field name="correctionReason" label={w.reason} error={errors['correctionReason']}>
          <input class="tall" type="text" value={form.reason} {...tie('correctionReason', errors['correctionReason'])} onInput={e => set({ reason: e.currentTarget.value })} /></Field>}
      </div>
      <OtherRemarks errors={errors} shown={['amount', 'givenAt', 'by', 'note', 'correctionReason']} />
      <div class="inline"><button type="submit" class="primary" disabled={!product} data-testid="submit-dose">{w.save}</button>
        {correcting && <button type="button" onClick={done}>{words.cancel}</button>}</div>
      {sent && <p role="status" data-testid="dose-kept">{outcome?.kind === 'answered' ? w.kept : outcome?.kind === 'refused' ? '' : w.keptHere}</p>}
      <Waiting products={products} />
    </form>
  );
}

/** What is on this device and not in the record. */
function Waiting({ products }: { products: DoseProductView[] }) {
  if (keptDoses.value.length === 0) return null;
  return (
    <div class="dose-list"><h3>{w.waitingHere}</h3>
      <ul>{keptDoses.value.map(i => (
        <li key={i.id} data-testid={i.refusal ? 'dose-refused-here' : 'dose-waiting-here'}>
          {products.find(p => p.id === i.request.productId)?.name ?? i.request.productId}, {i.request.kilograms !== null ? `${i.request.kilograms} kg` : `${i.request.litres} L`}, {fullClock(i.request.givenAt, zone.value)}, {i.request.by}
          {i.refusal && <p class="mark"><WarnGlyph /><span><b>{w.refusedHere}:</b> {i.refusal.errors.map(e => e.text).join(' ') || i.refusal.title}</span></p>}
          {i.refusal && <button type="button" class="slim" onClick={() => { if (confirm(w.dropSure)) doses.drop(i.id); }}>{w.drop}</button>}
        </li>))}</ul></div>
  );
}
