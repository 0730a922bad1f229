import { useState } from 'preact/hooks';
import { post } from '../api/http';
import type { AlarmView } from '../contract';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { words } from '../words';

const path = (a: AlarmView, verb: string) => `/alarms/${encodeURIComponent(a.id)}/${verb}`;

/** Acknowledging, resetting a latch, or taking off the shelf: a name and, if wanted, words. */
export function AcknowledgeForm({ alarm, verb, onDone }: { alarm: AlarmView; verb: 'acknowledge' | 'reset' | 'unshelve'; onDone: () => void }) {
  const [comment, setComment] = useState('');
  const { busy, errors, run, setErrors } = useAction<AlarmView>(onDone);
  const submit = () => who.value.trim() ? void run(() => post(path(alarm, verb), { by: who.value.trim(), comment: comment.trim() || null })) : setErrors({ by: words.needName });
  const k = alarm.id;
  return (
    <form class="action" noValidate onSubmit={e => { e.preventDefault(); submit(); }}>
      <NameField name={`by-${k}`} error={errors['by']} />
      <Field name={`comment-${k}`} label={words.alarms.comment} error={errors['comment']}>
        <input type="text" value={comment} {...tie(`comment-${k}`, errors['comment'])} onInput={e => setComment(e.currentTarget.value)} />
      </Field>
      <OtherRemarks errors={errors} shown={['by', 'comment']} />
      <div class="inline"><button type="submit" class="primary" disabled={busy} data-testid="confirm-ack">{words.alarms[verb]}</button>
        <button type="button" onClick={onDone}>{words.cancel}</button></div>
    </form>
  );
}

/** Shelving for a time; it comes back by itself. */
export function ShelveForm({ alarm, onDone }: { alarm: AlarmView; onDone: () => void }) {
  const [why, setWhy] = useState('');
  const [minutes, setMinutes] = useState(30);
  const [oneShot, setOneShot] = useState(false);
  const { busy, errors, run, setErrors } = useAction<AlarmView>(onDone);
  const submit = () => {
    const missing = { ...(who.value.trim() ? {} : { by: words.needName }), ...(why.trim() ? {} : { why: words.alarms.needWhy }) };
    if (Object.keys(missing).length) return setErrors(missing);
    void run(() => post(path(alarm, 'shelve'), { by: who.value.trim(), why: why.trim(), minutes, oneShot }));
  };
  const k = alarm.id;
  return (
    <form class="action" noValidate onSubmit={e => { e.preventDefault(); submit(); }}>
      <Field name={`minutes-${k}`} label={words.alarms.shelveFor} error={errors['minutes']}>
        <select value={minutes} {...tie(`minutes-${k}`, errors['minutes'])} onChange={e => setMinutes(Number(e.currentTarget.value))}>
          {[15, 30, 60, 120, 240, 480].map(m => <option key={m} value={m}>{m < 60 ? words.alarms.minutes(m) : words.alarms.hours(m / 60)}</option>)}
        </select>
      </Field>
      <label class="mark"><input type="checkbox" checked={oneShot} onChange={e => setOneShot(e.currentTarget.checked)} />{words.alarms.oneShot}</label>
      <NameField name={`by-${k}`} error={errors['by']} />
      <Field name={`why-${k}`} label={words.alarms.why} error={errors['why']}>
        <input type="text" value={why} {...tie(`why-${k}`, errors['why'])} onInput={e => setWhy(e.currentTarget.value)} />
      </Field>
      <OtherRemarks errors={errors} shown={['minutes', 'by', 'why']} />
      <div class="inline"><button type="submit" class="primary" disabled={busy} data-testid="confirm-shelve">{words.alarms.shelve}</button>
        <button type="button" onClick={onDone}>{words.cancel}</button></div>
    </form>
  );
}
