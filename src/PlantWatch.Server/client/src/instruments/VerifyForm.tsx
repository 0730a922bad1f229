import { useState } from 'preact/hooks';
import type { Measurand } from '../contract';
import type { InstrumentView, VerifyRequest } from '../contract.instrument';
import { decimalsOf, plain, readTyped, signed, unitOf } from '../format/number';
import { uuid7 } from '../format/uuid7';
import { dayClock } from '../format/zone';
import { serverNow } from '../live/clock';
import { zone } from '../live/store';
import { flushVerifications, verifications } from '../outbox/verifications';
import { Field, Remark, tie } from '../parts/Field';
import { TickGlyph, WarnGlyph } from '../parts/Glyph';
import { focusFirstWrong, formInHand } from '../parts/mending';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { words } from '../words';

const w = words.instruments;

/** An instrument held against a standard: what it should read, what it reads, and what that says, while it is typed. What was refused is mended in it, and keeps its time. */
export function VerifyForm({ instrument, mends, onSent, onLeave }: { instrument: InstrumentView; mends: VerifyRequest | null; onSent: (id: string) => void; onLeave: () => void }) {
  const [m, setM] = useState<Measurand>(instrument.tests.find(t => t.measurand === mends?.measurand)?.measurand ?? instrument.tests[0]!.measurand);
  const [text, setText] = useState(mends === null ? { standard: '', nominal: '', tolerance: '', reading: '' } : { standard: mends.standard, nominal: plain(mends.nominal), tolerance: plain(mends.tolerance), reading: plain(mends.reading) });
  const [madeAt, setMadeAt] = useState(mends?.verifiedAt ?? null);
  const [errors, setErrors] = useState<Record<string, string>>({});
  // A remark stays until its field is changed.
  const set = (change: Partial<typeof text>) => { setText({ ...text, ...change }); setErrors(Object.fromEntries(Object.entries(errors).filter(([k]) => !(k in change)))); };
  const [nominal, tolerance, reading] = [text.nominal, text.tolerance, text.reading].map(readTyped) as [ReturnType<typeof readTyped>, ReturnType<typeof readTyped>, ReturnType<typeof readTyped>];
  const off = nominal.kind === 'number' && reading.kind === 'number' ? reading.value - nominal.value : null;
  const within = off !== null && tolerance.kind === 'number' ? Math.abs(off) <= tolerance.value + 1e-9 : null;
  const submit = () => {
    const wrong: Record<string, string> = { ...(text.standard.trim() ? {} : { standard: w.need }), ...(who.value.trim() ? {} : { by: words.needName }) };
    for (const [key, typed] of [['nominal', nominal], ['tolerance', tolerance], ['reading', reading]] as const) if (typed.kind !== 'number') wrong[key] = typed.kind === 'empty' ? w.need : w.number;
    if (tolerance.kind === 'number' && tolerance.value <= 0) wrong['tolerance'] = w.positive;
    setErrors(wrong);
    if (Object.keys(wrong).length > 0 || nominal.kind !== 'number' || tolerance.kind !== 'number' || reading.kind !== 'number') return focusFirstWrong(formInHand());
    const request: VerifyRequest = { instrumentId: instrument.id, measurand: m, standard: text.standard.trim(), nominal: nominal.value, tolerance: tolerance.value, reading: reading.value, verifiedAt: madeAt ?? new Date(serverNow()).toISOString(), by: who.value.trim() };
    const id = uuid7();
    try { verifications.put(id, request, Date.now()); } catch { return setErrors({ form: words.check.storageFull }); }
    onSent(id);
    void flushVerifications();
  };
  const number = (key: 'nominal' | 'tolerance' | 'reading', label: string, hint?: string) => (
    <Field name={key} label={label} error={errors[key]} hint={hint}><div class="result-line"><input class="big" type="text" inputMode="decimal" autocomplete="off" value={text[key]} {...tie(key, errors[key])} onInput={e => set({ [key]: e.currentTarget.value })} /><span class="unit">{unitOf(m)}</span></div></Field>);
  return (
    <form class="action" noValidate onSubmit={e => { e.preventDefault(); submit(); }} data-testid={`verify-form-${instrument.id}`}>
      <Field name="verify-test" label={w.test}><select class="tall" value={m} {...tie('verify-test')} onChange={e => setM(e.currentTarget.value as Measurand)}>{instrument.tests.map(t => <option key={t.measurand} value={t.measurand}>{words.measurand[t.measurand]}</option>)}</select></Field>
      <Field name="standard" label={w.standard} hint={w.standardHint} error={errors['standard']}><input class="tall" type="text" autocomplete="off" value={text.standard} {...tie('standard', errors['standard'])} onInput={e => set({ standard: e.currentTarget.value })} /></Field>
      {number('nominal', w.nominal)}{number('tolerance', w.tolerance, w.toleranceHint)}{number('reading', w.reading)}
      {off !== null && <p class="mark" role="status" data-testid="verify-preview">{within === null ? null : within ? <TickGlyph /> : <WarnGlyph />}<span>{w.preview(`${signed(off, decimalsOf(m))} ${unitOf(m)}`)}{within !== null && <>: <b>{w.verdicts[within ? 'within' : 'outside']}</b></>}</span></p>}
      {madeAt && <p class="hint" data-testid="verify-keeps-time">{words.outbox.keepsTime(dayClock(madeAt, zone.value))} <button type="button" class="slim" onClick={() => setMadeAt(null)}>{words.outbox.timeNow}</button></p>}
      <NameField name="verify-by" error={errors['by']} /><Remark name="form" text={errors['form']} />
      <div class="inline"><button type="submit" class="primary" data-testid="submit-verify">{w.save}</button><button type="button" onClick={onLeave}>{w.cancel}</button></div>
    </form>
  );
}
