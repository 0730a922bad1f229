import { useState } from 'preact/hooks';
import { post } from '../api/http';
import type { AlarmView, MakeSafeRequest } from '../contract';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { words } from '../words';

type Act = 'bathersOut' | 'pumpsIsolated' | 'circulationHeld' | 'roomLeft' | 'tankDealtWith';
const none: Record<Act, boolean> = { bathersOut: false, pumpsIsolated: false, circulationHeld: false, roomLeft: false, tankDealtWith: false };

/** Pipes that were dosed into and a tank with a wrong product ask for different acts. */
const actsOf = (rule: string): Act[] => (rule === 'R-043' ? ['roomLeft', 'pumpsIsolated', 'tankDealtWith'] : ['bathersOut', 'pumpsIsolated', 'circulationHeld']);

/** What was done to make it safe. All of it or nothing: half safe is not safe. */
export function MakeSafeForm({ alarm, onDone }: { alarm: AlarmView; onDone: () => void }) {
  const [done, setDone] = useState(none);
  const [comment, setComment] = useState('');
  const { busy, errors, run, setErrors } = useAction<AlarmView>(onDone);
  const w = words.makeSafe, k = alarm.id, acts = actsOf(alarm.rule), says = alarm.rule === 'R-043' ? w.ofTank : w;
  const submit = () => {
    const missing = { ...(acts.every(a => done[a]) ? {} : { acts: w.all }), ...(who.value.trim() ? {} : { by: words.needName }) };
    if (Object.keys(missing).length) return setErrors(missing);
    const request: MakeSafeRequest = { ...done, by: who.value.trim(), comment: comment.trim() || null };
    void run(() => post(`/alarms/${encodeURIComponent(alarm.id)}/made-safe`, request));
  };
  return (
    <form class="action" noValidate onSubmit={e => { e.preventDefault(); submit(); }}>
      <Field name={`acts-${k}`} label={says.legend} error={errors['acts']} group>
        {acts.map(a => <label key={a} class="mark"><input type="checkbox" checked={done[a]} data-testid={a} onChange={e => setDone({ ...done, [a]: e.currentTarget.checked })} />{a === 'pumpsIsolated' ? says.pumpsIsolated : w[a]}</label>)}
      </Field>
      <NameField name={`by-${k}`} error={errors['by']} />
      <Field name={`comment-${k}`} label={words.alarms.comment} error={errors['comment']}>
        <input type="text" value={comment} {...tie(`comment-${k}`, errors['comment'])} onInput={e => setComment(e.currentTarget.value)} />
      </Field>
      <OtherRemarks errors={errors} shown={['acts', 'by', 'comment']} />
      <div class="inline"><button type="submit" class="primary" disabled={busy} data-testid="confirm-safe">{w.save}</button>
        <button type="button" onClick={onDone}>{words.cancel}</button></div>
    </form>
  );
}
