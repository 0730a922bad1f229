import { useState } from 'preact/hooks';
import { post } from '../api/http';
import type { LabView } from '../contract.laboratory';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { words } from '../words';

const w = words.laboratory;

/** A person who may closes a finding, with a reason. */
export function CloseResult({ id, onDone }: { id: string; onDone: () => void }) {
  const [why, setWhy] = useState('');
  const { busy, errors, run, setErrors } = useAction<LabView>(onDone);
  const submit = () => {
    const missing = { ...(why.trim() ? {} : { why: w.need }), ...(who.value.trim() ? {} : { by: words.needName }) };
    if (Object.keys(missing).length) return setErrors(missing);
    void run(() => post(`/laboratory/${id}/close`, { by: who.value.trim(), why: why.trim() }));
  };
  return (
    <details class="form-part"><summary>{w.close}</summary>
      <form class="action" noValidate onSubmit={e => { e.preventDefault(); submit(); }}>
        <p>{w.closeLead}</p>
        <Field name={`why-${id}`} label={w.why} error={errors['why']}><textarea rows={2} value={why} {...tie(`why-${id}`, errors['why'])} onInput={e => setWhy(e.currentTarget.value)} /></Field>
        <NameField name={`by-${id}`} error={errors['by']} />
        <OtherRemarks errors={errors} shown={['why', 'by']} />
        <div class="inline"><button type="submit" disabled={busy} data-testid="close-result">{w.closeNow}</button></div>
      </form>
    </details>
  );
}
