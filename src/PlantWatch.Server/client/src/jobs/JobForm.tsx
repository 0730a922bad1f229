import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { put } from '../api/http';
import type { Errors } from '../check/build';
import type { JobState } from '../contract';
import type { JobRequest, JobView, PartUsed } from '../contract.jobs';
import { uuid7 } from '../format/uuid7';
import { alarms } from '../live/store';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { MendLine } from '../parts/MendLine';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { words } from '../words';
import { AssetChoice } from './AssetChoice';
import { isTouched, keep, keyOf, recalled, type Beginning, type Draft } from './draft';
import { PartRows } from './PartRows';
import { PictureField } from './PictureField';
import { pathOf, type Item } from './pictures';

const states: JobState[] = ['open', 'in_hand', 'waiting_for_parts', 'done'];
const w = words.jobs;

/** The alarm that stands for a thing, when there is just one: the job is most likely its answer. */
function standingOf(asset: string | null): string | null {
  const standing = alarms.peek().filter(a => a.subject === asset && a.active);
  return standing.length === 1 ? standing[0]!.id : null;
}

const there = (hash: string): Item => ({ key: hash, preview: pathOf(hash), blob: null, state: 'there', hash, why: null });

const hashes = (pictures: Item[]) => [...new Set(pictures.flatMap(p => (p.hash ? [p.hash] : [])))];

function beginWith({ job, asset, task }: Beginning): Draft {
  return {
    asset: job?.asset ?? asset ?? '', seen: job?.seen ?? task?.name ?? '', done: job?.done ?? '', state: job?.state ?? 'open', alarmId: job ? job.alarmId : task ? null : standingOf(asset),
    taskId: job?.taskId ?? task?.id ?? null, parts: job?.parts ?? [], minutes: job?.minutes == null ? '' : String(job.minutes),
  };
}

const isPart = (p: PartUsed) => p.name.trim() !== '' && Number.isInteger(p.count) && p.count >= 1 && p.count <= 10_000;
const minutesOf = (text: string): number | null | undefined => (text.trim() === '' ? null : /^\d{1,5}$/.test(text.trim()) && Number(text) <= 10_080 ? Number(text) : undefined);

function missing(form: Draft): Errors {
  return {
    ...(form.asset ? {} : { asset: w.needAsset }), ...(form.seen.trim() ? {} : { seen: w.needSeen }), ...(form.state === 'done' && !form.done?.trim() ? { done: w.needDone } : {}),
    ...(minutesOf(form.minutes) === undefined ? { minutes: w.needMinutes } : {}), ...(form.parts.every(isPart) ? {} : { parts: w.needPart }), ...(who.value.trim() ? {} : { by: words.needName }),
  };
}

/** A job, new or carried on: what was seen, what was done, where it stands. */
export function JobForm({ begin, filters, onDone }: { begin: Beginning; filters?: { id: string; name: string }[]; onDone: () => void }) {
  const [key] = useState(() => keyOf(begin)), [before] = useState(() => recalled(key)), carriesOn = begin.job !== null || before?.carriesOn === true;
  const [id] = useState(() => before?.id ?? begin.job?.id ?? uuid7()), after = before ? before.after : begin.job?.at ?? null;
  const [began] = useState(() => beginWith(begin)), [form, setForm] = useState<Draft>(before?.draft ?? began);
  const [pictures, setPictures] = useState<Item[]>(() => (before?.pictures ?? begin.job?.pictures ?? []).map(there));
  const [unkept, setUnkept] = useState(false), touched = before !== null || isTouched(form, hashes(pictures), began, begin.job?.pictures ?? []);
  const top = useRef<HTMLFormElement>(null);
  // On a phone the form stands below what it is about, and whoever asked for it must not look for it.
  useEffect(() => top.current?.scrollIntoView({ block: 'start' }), []);
  const set = (change: Partial<Draft>) => setForm(f => ({ ...f, ...change }));
  const leave = () => { keep(key, null); onDone(); };
  const { busy, errors, run, setErrors } = useAction<JobView>(leave);
  useLayoutEffect(() => { setUnkept(!keep(key, touched ? { id, after, carriesOn, task: begin.task ?? null, draft: form, pictures: hashes(pictures) } : null) && touched); }, [form, pictures]);
  const related = alarms.value.filter(a => a.subject === form.asset || a.id === form.alarmId);
  const submit = () => {
    const wrong = { ...missing(form), ...(pictures.every(p => p.state === 'there') ? {} : { pictures: w.needPictures }) };
    if (Object.keys(wrong).length) return setErrors(wrong);
    const request: JobRequest = {
      ...form, seen: form.seen.trim(), done: form.done?.trim() || null, by: who.value.trim(), after, minutes: minutesOf(form.minutes) ?? null,
      parts: form.parts.map(p => ({ ...p, name: p.name.trim(), number: p.number?.trim() || null })), pictures: hashes(pictures),
    };
    void run(() => put('/jobs/' + id, request));
  };
  return (
    <form ref={top} class="sheet card action come-to" noValidate onSubmit={e => { e.preventDefault(); submit(); }} data-testid="job-form">
      <h2>{carriesOn ? w.carryOn : w.newJob}{form.taskId && <span class="hint"> {'\u00b7'} {w.planOf}</span>}</h2>
      <AssetChoice value={form.asset} fixed={carriesOn || form.taskId !== null} filters={filters ?? []} error={errors['asset']} onChange={asset => set({ asset, alarmId: standingOf(asset) })} />
      {related.length > 0 && !form.taskId && (
        <Field name="alarm" label={w.alarm} error={errors['alarmId']}>
          <select value={form.alarmId ?? ''} {...tie('alarm', errors['alarmId'])} onChange={e => set({ alarmId: e.currentTarget.value || null })}>
            <option value="">{w.noAlarm}</option>{related.map(a => <option key={a.id} value={a.id}>{a.title}</option>)}
          </select>
        </Field>)}
      <Field name="seen" label={w.seen} error={errors['seen']}><textarea rows={2} value={form.seen} {...tie('seen', errors['seen'])} onInput={e => set({ seen: e.currentTarget.value })} /></Field>
      <Field name="done" label={w.done} error={errors['done']}><textarea rows={2} value={form.done ?? ''} {...tie('done', errors['done'])} onInput={e => set({ done: e.currentTarget.value })} /></Field>
      <Field name="job-state" label={w.stateLabel} error={errors['state']} group>
        <div class="choices">{states.map(s => (
          <label key={s} class="choice"><input type="radio" name={'state-' + id} checked={form.state === s} data-testid={`job-state-${s}`} onChange={() => set({ state: s })} />{w.state[s]}</label>))}</div>
      </Field>
      <PartRows parts={form.parts} error={errors['parts'] ?? Object.entries(errors).find(([k]) => k.startsWith('parts['))?.[1]} onChange={parts => set({ parts })} />
      <PictureField items={pictures} change={setPictures} error={errors['pictures']} />
      <Field name="minutes" label={w.minutes} error={errors['minutes']}><input type="text" inputmode="numeric" class="short" value={form.minutes} {...tie('minutes', errors['minutes'])} onInput={e => set({ minutes: e.currentTarget.value })} /></Field>
      <NameField name="job-by" error={errors['by']} />
      <OtherRemarks errors={errors} shown={['asset', 'alarmId', 'seen', 'done', 'state', 'minutes', 'by', 'parts', 'pictures', ...form.parts.map((_, i) => `parts[${i}]`)]} />
      <MendLine errors={errors} />
      <div class="inline"><button type="submit" class="primary" disabled={busy} data-testid="submit-job">{w.save}</button><button type="button" data-testid="cancel-job" onClick={() => { if (!touched || confirm(words.check.clearSure)) leave(); }}>{words.cancel}</button></div>
      {unkept ? <p class="notice bad" role="alert">{w.unkept}</p> : touched && <p class="hint" data-testid="job-kept">{w.draft}</p>}
    </form>
  );
}
