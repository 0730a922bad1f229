import { useState } from 'preact/hooks';
import { post } from '../api/http';
import type { HandoverView } from '../contract.handover';
import { uuid7 } from '../format/uuid7';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { words } from '../words';
import { Lines } from './Lines';

const w = words.handover;

/** Who leaves writes down what no screen knows. */
export function NoteForm({ view, onDone }: { view: HandoverView; onDone: (said: string) => void }) {
  const [id, renew] = useState(uuid7), [note, setNote] = useState('');
  const { busy, errors, run, setErrors } = useAction<HandoverView>(() => { setNote(''); renew(uuid7()); onDone(w.wroteIt); });
  const submit = () => {
    const wrong = { ...(note.trim() ? {} : { note: w.needNote }), ...(who.value.trim() ? {} : { by: words.needName }) };
    if (Object.keys(wrong).length) return setErrors(wrong);
    void run(() => post('/handover/note', { id, by: who.value.trim(), note: note.trim() }));
  };
  return (
    <form class="sheet card action no-print" noValidate onSubmit={e => { e.preventDefault(); submit(); }} data-testid="handover-note-form">
      <h2>{w.leave}</h2><p class="hint">{w.leaveHint}</p>
      {view.waiting && <p class="hint">{w.another}</p>}
      <Field name="note" label={w.note} error={errors['note']}><textarea rows={4} maxLength={4000} value={note} {...tie('note', errors['note'])} onInput={e => setNote(e.currentTarget.value)} /></Field>
      <NameField name="leave-by" label={w.leaveName} error={errors['by']} />
      <OtherRemarks errors={errors} shown={['note', 'by']} />
      <div class="inline"><button type="submit" disabled={busy} data-testid="submit-note">{w.saveNote}</button></div>
    </form>
  );
}

/** Who comes in signs what stands. The name is typed: the one that this device remembers may be of who leaves. */
export function SignForm({ view, onDone, onStale }: { view: HandoverView; onDone: (said: string) => void; onStale: () => void }) {
  const [own] = useState(uuid7), [remark, setRemark] = useState('');
  const [name, setName] = useState('');
  const { busy, errors, run, setErrors } = useAction<HandoverView>(() => { setRemark(''); setName(''); onDone(w.signedIt); });
  const submit = () => {
    if (!name.trim()) return setErrors({ by: words.needName });
    void run(() => post('/handover/sign', { id: view.waiting?.id ?? own, by: name.trim(), remark: remark.trim() || null, shown: view.shown }));
  };
  return (
    <form class="sheet card action no-print" noValidate onSubmit={e => { e.preventDefault(); submit(); }} data-testid="handover-sign-form">
      <h2>{w.come}</h2><p class="hint">{w.comeHint}</p>
      {!view.waiting && <p class="hint">{w.without}</p>}
      <details><summary>{view.lines.length === 0 ? w.noLines : w.lines(view.lines.length)}</summary><Lines lines={view.lines} /></details>
      <Field name="come-remark" label={w.remark} error={errors['remark']}><textarea rows={2} maxLength={4000} value={remark} {...tie('come-remark', errors['remark'])} onInput={e => setRemark(e.currentTarget.value)} /></Field>
      <Field name="come-by" label={w.comeName} error={errors['by']}><input type="text" autocomplete="off" value={name} {...tie('come-by', errors['by'])} onInput={e => setName(e.currentTarget.value)} /></Field>
      <OtherRemarks errors={errors} shown={['remark', 'by']} />
      <div class="inline"><button type="submit" class="primary" disabled={busy} data-testid="submit-sign">{w.signIt}</button>
        {errors['shown'] && <button type="button" data-testid="read-again" onClick={() => { setErrors({}); onStale(); }}>{w.readAgain}</button>}</div>
    </form>
  );
}
