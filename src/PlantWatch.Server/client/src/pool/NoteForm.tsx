import type { Signal } from '@preact/signals';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { uuid7 } from '../format/uuid7';
import { fromField, toField } from '../format/zone';
import { serverNow } from '../live/clock';
import { zone } from '../live/store';
import { flushNotes, notes } from '../outbox/notes';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { focusFirstWrong } from '../parts/mending';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { words } from '../words';
import { objections, requestOf, type NoteDraft } from './noteDraft';

const w = words.stripTools.note;

function TimeField({ name, label, at, error, set }: { name: 'from' | 'to'; label: string; at: number; error: string | undefined; set: (at: number | null) => void }) {
  const [typed, type] = useState<string | null>(null);
  const sent = useRef(at);
  // What is dragged after typing counts again; what was typed here is not written over with itself.
  useEffect(() => { if (at !== sent.current) { sent.current = at; type(null); set(at); } }, [at]);
  const took = (text: string) => { const time = fromField(text, zone.value); type(text); if (time !== null) sent.current = time; set(time); };
  return (
    <Field name={`note-${name}`} label={label} error={error} hint={w.hint}>
      <input class="tall" type="datetime-local" value={typed ?? toField(at, zone.value)} {...tie(`note-${name}`, error)} onInput={e => took(e.currentTarget.value)} />
    </Field>
  );
}

/** Writes a note, corrects one or takes one back; works without a connection. The draft is shared with the strips, where its time can be dragged. */
export function NoteForm({ draft, poolId, back }: { draft: Signal<NoteDraft | null>; poolId: string; back: () => void }) {
  const host = useRef<HTMLFormElement>(null);
  const [errors, setErrors] = useState<Record<string, string>>({});
  const [blank, setBlank] = useState({ from: false, to: false });
  const d = draft.value!;
  const close = () => { draft.value = null; back(); };
  const set = (part: Partial<NoteDraft>) => { draft.value = { ...d, ...part }; };
  const setTime = (key: 'from' | 'to', at: number | null) => { setBlank(b => ({ ...b, [key]: at === null })); if (at !== null) set({ [key]: at }); };
  useLayoutEffect(() => { host.current?.querySelector<HTMLElement>('textarea, input')?.focus(); }, [d.mends?.id, d.retract]);

  const submit = () => {
    const missing = objections({ ...d, from: blank.from ? null : d.from, to: blank.to ? null : d.to }, who.value, serverNow());
    setErrors(missing);
    if (Object.keys(missing).length > 0) return focusFirstWrong(host.current!);
    try { notes.put(uuid7(), requestOf(d, poolId, who.value), Date.now()); } catch { return setErrors({ form: words.check.storageFull }); }
    close();
    void flushNotes();
  };

  return (
    <form class="note-form" ref={host} noValidate onSubmit={e => { e.preventDefault(); submit(); }} onKeyDown={e => { if (e.key === 'Escape') { e.stopPropagation(); close(); } }} data-testid="note-form">
      <h3>{d.retract ? w.retracting : d.mends ? w.correcting : w.title}</h3>
      {d.retract ? <p><b>{d.text}</b> <span class="hint block">{w.gone}</span></p> : <>
        <p class="hint">{w.lead}</p>
        <Field name="note-text" label={w.text} error={errors['text']} hint={w.textHint}><textarea rows={2} maxLength={4000} value={d.text} {...tie('note-text', errors['text'])} onInput={e => set({ text: e.currentTarget.value })} /></Field>
        <div class="two"><TimeField name="from" label={w.from} at={d.from} error={errors['from']} set={at => setTime('from', at)} /><TimeField name="to" label={w.to} at={d.to} error={errors['to']} set={at => setTime('to', at)} /></div></>}
      <div class="two">
        {d.mends && <Field name="note-why" label={d.retract ? w.whyGone : w.why} error={errors['why']}><input class="tall" type="text" value={d.why} {...tie('note-why', errors['why'])} onInput={e => set({ why: e.currentTarget.value })} /></Field>}
        <NameField name="note-by" label={w.by} error={errors['by']} />
      </div>
      <OtherRemarks errors={errors} shown={['from', 'to', 'text', 'why', 'by']} />
      <div class="inline"><button type="submit" class="primary" data-testid="submit-note">{d.retract ? w.retract : d.mends ? w.correct : w.save}</button><button type="button" onClick={close}>{w.cancel}</button></div>
    </form>
  );
}
