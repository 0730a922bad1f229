import { useState } from 'preact/hooks';
import { post } from '../api/http';
import type { AlarmView, OutOfServiceRequest } from '../contract';
import type { SubjectView } from '../contract.alarms';
import type { Errors } from '../check/build';
import { fromField, toField } from '../format/zone';
import { serverNow } from '../live/clock';
import { zone } from '../live/store';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { words } from '../words';

const w = words.rulesPage;
const day = 86_400_000;

/** Taking an alarm of a rule out of service for a time, by name and with a reason. */
export function TakeOutForm({ rule, subject, subjects, onDone }: { rule: string; subject?: string; subjects: SubjectView[]; onDone: () => void }) {
  const [what, setWhat] = useState(subject ?? (subjects.length === 1 ? subjects[0]!.subject : ''));
  const [why, setWhy] = useState('');
  const [until, setUntil] = useState(() => toField(serverNow() + day, zone.value));
  const { busy, errors, run, setErrors } = useAction<AlarmView>(onDone);
  const k = rule;
  const submit = () => {
    const end = fromField(until, zone.value);
    const missing: Errors = {
      ...(what ? {} : { subject: w.needWhat }), ...(why.trim() ? {} : { why: words.alarms.needWhy }), ...(who.value.trim() ? {} : { by: words.needName }),
      ...(end === null ? { until: w.needUntil } : end <= serverNow() ? { until: w.past } : {}),
    };
    if (Object.keys(missing).length) return setErrors(missing);
    const body: OutOfServiceRequest = { rule, subject: what, by: who.value.trim(), why: why.trim(), until: new Date(end!).toISOString() };
    void run(() => post('/alarms/out-of-service', body));
  };
  return (
    <form class="action" noValidate data-testid="take-out" onSubmit={e => { e.preventDefault(); submit(); }}>
      <p class="notice">{w.caution}</p>
      {!subject && <Field name={`out-what-${k}`} label={w.what} error={errors['subject']}>
        <select value={what} {...tie(`out-what-${k}`, errors['subject'])} onChange={e => setWhat(e.currentTarget.value)}>
          <option value="">{w.choose}</option>{subjects.map(s => <option key={s.subject} value={s.subject}>{s.name}</option>)}
        </select></Field>}
      <Field name={`out-why-${k}`} label={w.why} error={errors['why']}><input type="text" value={why} {...tie(`out-why-${k}`, errors['why'])} onInput={e => setWhy(e.currentTarget.value)} /></Field>
      <Field name={`out-until-${k}`} label={w.until} hint={w.untilHint} error={errors['until']}><input type="datetime-local" class="tall" value={until} {...tie(`out-until-${k}`, errors['until'])} onInput={e => setUntil(e.currentTarget.value)} /></Field>
      <NameField name={`out-by-${k}`} error={errors['by']} />
      <OtherRemarks errors={errors} shown={['why', 'until', 'by', ...(subject ? [] : ['subject'])]} />
      <div class="inline"><button type="submit" class="primary" disabled={busy} data-testid="confirm-out">{w.take}</button><button type="button" onClick={onDone}>{words.cancel}</button></div>
    </form>
  );
}

/** Returning it before its time. */
export function ReturnForm({ rule, subject, onDone }: { rule: string; subject: string; onDone: () => void }) {
  const [why, setWhy] = useState('');
  const { busy, errors, run, setErrors } = useAction<AlarmView>(onDone);
  const k = `${rule}-${subject}`;
  const submit = () => who.value.trim() ? void run(() => post('/alarms/return-to-service', { rule, subject, by: who.value.trim(), why: why.trim() || null })) : setErrors({ by: words.needName });
  return (
    <form class="action" noValidate data-testid="return" onSubmit={e => { e.preventDefault(); submit(); }}>
      <NameField name={`back-by-${k}`} error={errors['by']} />
      <Field name={`back-why-${k}`} label={w.back} error={errors['why']}><input type="text" value={why} {...tie(`back-why-${k}`, errors['why'])} onInput={e => setWhy(e.currentTarget.value)} /></Field>
      <OtherRemarks errors={errors} shown={['by', 'why']} />
      <div class="inline"><button type="submit" class="primary" disabled={busy} data-testid="confirm-return">{w.giveBack}</button><button type="button" onClick={onDone}>{words.cancel}</button></div>
    </form>
  );
}
