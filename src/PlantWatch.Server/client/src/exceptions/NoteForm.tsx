import { useState } from 'preact/hooks';
import { post } from '../api/http';
import type { Errors } from '../check/build';
import type { ExceptionView } from '../contract.exceptions';
import { uuid7 } from '../format/uuid7';
import { fromField, toField } from '../format/zone';
import { zone } from '../live/store';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { words } from '../words';

const w = words.exceptions;

/** What was done, in words: the one thing that no other entry tells. */
export function NoteForm({ line, onDone }: { line: ExceptionView; onDone: () => void }) {
  const [id, renew] = useState(uuid7);
  const [text, setText] = useState('');
  const [when, setWhen] = useState(() => toField(Date.now(), zone.value));
  const [touched, touch] = useState(false);
  const { busy, errors, run, setErrors } = useAction<ExceptionView>(() => { renew(uuid7()); setText(''); touch(false); onDone(); });
  const submit = () => {
    const wrong: Errors = {};
    const at = fromField(when, zone.value);
    if (!text.trim()) wrong['text'] = w.need;
    if (touched && at === null) wrong['doneAt'] = w.needTime;
    if (!who.value.trim()) wrong['by'] = words.needName;
    if (Object.keys(wrong).length) return setErrors(wrong);
    void run(() => post(`/exceptions/${line.id}/notes`, { id, by: who.value.trim(), text: text.trim(), doneAt: touched ? new Date(at!).toISOString() : null }));
  };
  return (
    <details class="form-part"><summary data-testid="say-done">{w.say}</summary>
      <form class="action" noValidate onSubmit={e => { e.preventDefault(); submit(); }}>
        <p class="hint">{w.sayLead}</p>
        <Field name={`text-${line.id}`} label={w.text} error={errors['text']}><textarea rows={2} value={text} {...tie(`text-${line.id}`, errors['text'])} onInput={e => setText(e.currentTarget.value)} /></Field>
        <Field name={`done-${line.id}`} label={w.when} error={errors['doneAt']}><input type="datetime-local" class="tall" value={when} {...tie(`done-${line.id}`, errors['doneAt'])} onInput={e => { touch(true); setWhen(e.currentTarget.value); }} /></Field>
        <NameField name={`note-by-${line.id}`} error={errors['by']} />
        <OtherRemarks errors={errors} shown={['text', 'doneAt', 'by']} />
        <div class="inline"><button type="submit" disabled={busy} data-testid="save-note">{w.save}</button></div>
      </form>
    </details>
  );
}
