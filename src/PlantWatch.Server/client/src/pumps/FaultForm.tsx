import { useEffect, useRef, useState } from 'preact/hooks';
import { put } from '../api/http';
import type { FaultNote, FaultRequest, FaultState } from '../contract';
import { uuid7 } from '../format/uuid7';
import { alarms, allProbes, allPumps, nameOf } from '../live/store';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { words } from '../words';

const states: FaultState[] = ['open', 'in_hand', 'done'];

/** The alarm that stands for a thing, when there is just one: the note is most likely its answer. */
function standingOf(asset: string | null): string | null {
  const standing = alarms.peek().filter(a => a.subject === asset && a.active);
  return standing.length === 1 ? standing[0]!.id : null;
}

/** A fault note, new or carried on: what was seen, what was done, where it stands. */
export function FaultForm({ asset, note, onDone }: { asset: string | null; note: FaultNote | null; onDone: () => void }) {
  const [id] = useState(() => note?.id ?? uuid7());
  const [form, setForm] = useState<Omit<FaultRequest, 'by'>>({ asset: note?.asset ?? asset ?? '', seen: note?.seen ?? '', done: note?.done ?? '', state: note?.state ?? 'open', alarmId: note ? note.alarmId : standingOf(asset) });
  const top = useRef<HTMLFormElement>(null);
  // On a phone the form stands below the pumps, and whoever asked for it must not look for it.
  useEffect(() => top.current?.scrollIntoView({ block: 'start' }), []);
  const set = (change: Partial<typeof form>) => setForm(f => ({ ...f, ...change }));
  const { busy, errors, run, setErrors } = useAction<FaultNote>(onDone);
  const related = alarms.value.filter(a => a.subject === form.asset || a.id === form.alarmId);
  const w = words.pumps;
  const submit = () => {
    const missing = {
      ...(form.asset ? {} : { asset: w.needAsset }), ...(form.seen.trim() ? {} : { seen: w.needSeen }), ...(who.value.trim() ? {} : { by: words.needName }),
    };
    if (Object.keys(missing).length) return setErrors(missing);
    void run(() => put('/faults/' + id, { ...form, seen: form.seen.trim(), done: form.done?.trim() || null, by: who.value.trim() }));
  };
  return (
    <form ref={top} class="sheet card action come-to" noValidate onSubmit={e => { e.preventDefault(); submit(); }} data-testid="fault-form">
      <h2>{note ? w.carryOn : w.newNote}</h2>
      <Field name="asset" label={w.asset} error={errors['asset']}>
        <select value={form.asset} disabled={note !== null} {...tie('asset', errors['asset'])} onChange={e => set({ asset: e.currentTarget.value, alarmId: standingOf(e.currentTarget.value) })}>
          <option value="" />
          <optgroup label={words.poolPage.pumps}>{[...allPumps.value.values()].map(p => <option key={p.id} value={p.id}>{nameOf(p.id)}</option>)}</optgroup>
          <optgroup label={words.poolPage.probes}>{[...allProbes.value.values()].map(p => <option key={p.id} value={p.id}>{nameOf(p.id)}</option>)}</optgroup>
        </select>
      </Field>
      {related.length > 0 && (
        <Field name="alarm" label={w.alarm} error={errors['alarmId']}>
          <select value={form.alarmId ?? ''} {...tie('alarm', errors['alarmId'])} onChange={e => set({ alarmId: e.currentTarget.value || null })}>
            <option value="">{w.noAlarm}</option>{related.map(a => <option key={a.id} value={a.id}>{a.title}</option>)}
          </select>
        </Field>)}
      <Field name="seen" label={w.seen} error={errors['seen']}><textarea rows={2} value={form.seen} {...tie('seen', errors['seen'])} onInput={e => set({ seen: e.currentTarget.value })} /></Field>
      <Field name="done" label={w.done} error={errors['done']}><textarea rows={2} value={form.done ?? ''} {...tie('done', errors['done'])} onInput={e => set({ done: e.currentTarget.value })} /></Field>
      <Field name="fault-state" label={w.state} error={errors['state']} group>
        <div class="choices">{states.map(s => (
          <label key={s} class="choice"><input type="radio" name={'state-' + id} checked={form.state === s} data-testid={`fault-state-${s}`} onChange={() => set({ state: s })} />{words.fault[s]}</label>))}</div>
      </Field>
      <NameField name="fault-by" error={errors['by']} />
      <OtherRemarks errors={errors} shown={['asset', 'seen', 'done', 'state', 'by']} />
      <div class="inline"><button type="submit" class="primary" disabled={busy} data-testid="submit-fault">{w.save}</button><button type="button" onClick={onDone}>{words.cancel}</button></div>
    </form>
  );
}
