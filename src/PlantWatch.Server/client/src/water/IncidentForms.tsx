import { useState } from 'preact/hooks';
import { put } from '../api/http';
import type { IncidentView } from '../contract.incident';
import { uuid7 } from '../format/uuid7';
import { dayClock } from '../format/zone';
import { allPools, zone } from '../live/store';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { words } from '../words';

const w = words.incident;

/** What was done and seen, and a line for more. */
export function NotesCard({ incident, onDone }: { incident: IncidentView; onDone: () => void }) {
  const [id, renew] = useState(uuid7);
  const [text, setText] = useState('');
  const { busy, errors, run, setErrors } = useAction<IncidentView>(() => { setText(''); renew(uuid7()); onDone(); });
  const submit = () => {
    const missing = { ...(text.trim() ? {} : { text: w.needText }), ...(who.value.trim() ? {} : { by: words.needName }) };
    if (Object.keys(missing).length) return setErrors(missing);
    void run(() => put(`/incidents/${incident.id}/remarks/${id}`, { by: who.value.trim(), text: text.trim() }));
  };
  return (
    <form class="sheet card action" noValidate onSubmit={e => { e.preventDefault(); submit(); }}>
      <h2>{w.notes}</h2>
      {incident.remarks.length === 0 ? <p class="hint">{w.noNotes}</p> : (
        <ul class="incident-notes">{incident.remarks.map(r => <li key={r.id}><span class="under">{dayClock(r.at, zone.value)}, {r.by}</span><span class="block pre">{r.text}</span></li>)}</ul>)}
      <Field name="remark" label={w.noteWhat} error={errors['text']}><textarea rows={2} value={text} {...tie('remark', errors['text'])} onInput={e => setText(e.currentTarget.value)} /></Field>
      <NameField name="remark-by" error={errors['by']} />
      <OtherRemarks errors={errors} shown={['text', 'by']} />
      <div class="inline"><button type="submit" disabled={busy} data-testid="submit-remark">{w.addNote}</button></div>
    </form>
  );
}

/** Closing is a person's act: what to look at first, a name and a reason. */
export function CloseForm({ incident, onDone }: { incident: IncidentView; onDone: () => void }) {
  const [why, setWhy] = useState('');
  const { busy, errors, run, setErrors } = useAction<IncidentView>(onDone);
  const submit = () => {
    const missing = { ...(why.trim() ? {} : { why: w.needWhy }), ...(who.value.trim() ? {} : { by: words.needName }) };
    if (Object.keys(missing).length) return setErrors(missing);
    void run(() => put(`/incidents/${incident.id}/closing`, { by: who.value.trim(), why: why.trim() }));
  };
  const unproven = [{ poolId: incident.poolId, clock: incident.clock }, ...incident.others].filter(p => p.clock?.word !== 'reached').map(p => allPools.value.get(p.poolId)?.name ?? p.poolId);
  const deck = incident.kind === 'deck_spill';
  return (
    <details class="sheet form-part close-incident" data-testid="close-incident">
      <summary><h2>{w.close}</h2></summary>
      <form class="action" noValidate onSubmit={e => { e.preventDefault(); submit(); }}>
        {!deck && <><p>{w.closeLead}</p><ul class="plain">{incident.beforeOpening.map(said => <li key={said.code}>{said.text}</li>)}</ul></>}
        {!deck && unproven.length > 0 && <p class="notice" data-testid="not-reached">{incident.others.length > 0 && `${unproven.join(', ')}: `}{w.notReached}</p>}
        <Field name="close-why" label={w.why} error={errors['why']}><textarea rows={2} value={why} {...tie('close-why', errors['why'])} onInput={e => setWhy(e.currentTarget.value)} /></Field>
        <NameField name="close-by" error={errors['by']} />
        <OtherRemarks errors={errors} shown={['why', 'by']} />
        <div class="inline"><button type="submit" class="primary" disabled={busy} data-testid="submit-close">{w.closeNow}</button></div>
      </form>
    </details>
  );
}
