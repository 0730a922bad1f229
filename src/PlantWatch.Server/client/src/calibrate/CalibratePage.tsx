import { useEffect, useRef, useState } from 'preact/hooks';
import { post, put } from '../api/http';
import type { CalibrationView, ProbeInfo } from '../contract';
import type { BenchView, WorkView } from '../contract.bench';
import { fixed } from '../format/number';
import { clock, dayClock } from '../format/zone';
import { now, serverNow } from '../live/clock';
import { allProbes, nameOf, zone } from '../live/store';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { usePolled } from '../parts/usePolled';
import { Missing } from '../parts/Missing';
import { link } from '../router';
import { words } from '../words';
import { bottleOf, emptyDraft, emptyPoint, keepDraft, recallDraft, type BenchDraft, type Bottle, type PointDraft } from './draft';
import { PointForm } from './PointForm';
import { ResultForm } from './ResultForm';
import { isComplete } from './sheet';
import { WorkForm } from './WorkForm';

const w = words.calibrate;
const noBottle: Bottle = { lot: '', expires: '' };

/** The steps of this probe in order: what is put into no solution has only its work to note. */
const stepsOf = (bench: BenchView): BenchDraft['step'][] => (bench.probe.measurand === 'ph' || bench.probe.measurand === 'orp' ? ['start', 'found', 'work', 'points', 'result'] : ['start', 'work', 'result']);

function Start({ bench, draft, onGo }: { bench: BenchView; draft: BenchDraft; onGo: (work: WorkView | null) => void }) {
  const { busy, errors, run, setErrors } = useAction<WorkView>(onGo);
  const { probe, limits } = bench, m = probe.measurand;
  const go = () => who.value.trim() ? void run(() => put(`/bench/${encodeURIComponent(probe.id)}/out/${draft.workId}`, { by: who.value.trim() })) : setErrors({ by: words.needName });
  const away = errors['form'] !== undefined;
  return (
    <form class="action" noValidate onSubmit={e => { e.preventDefault(); go(); }}>
      {probe.origin === 'panel_scaled' && (m === 'ph' || m === 'orp') && <p class="notice">{w.start.panel}</p>}
      <p>{m === 'ph' ? w.start.ph : m === 'orp' ? w.start.orp : w.start.other}</p>
      <p class="notice"><b>{w.start.caution}</b></p>
      {(m === 'ph' || m === 'orp') && <p class="hint">{w.limits}: {m === 'ph' ? `${w.slopeLimits(fixed(limits.slopeLow, 0), fixed(limits.slopeHigh, 0))}, ${w.offsetLimits(fixed(limits.offsetMillivolts, 0))}` : w.orpLimits(fixed(limits.orpMillivolts, 0))}</p>}
      <NameField name="bench-start-by" error={errors['by']} />
      {errors['probeId'] && <p class="notice bad" role="alert">{errors['probeId']}</p>}
      {away && <p class="notice" role="alert" data-testid="cannot-mark">{w.cannotMark}</p>}
      <div class="submit-bar"><button type="submit" class="primary" disabled={busy} data-testid="begin">{w.start.go}</button>
        {(away || errors['probeId']) && <button type="button" data-testid="begin-anyway" onClick={() => onGo(null)}>{w.next}</button>}</div>
      <p class="hint">{w.start.marks} {w.kept}</p>
    </form>
  );
}

function Working({ bench, draft, reload, edit }: { bench: BenchView; draft: BenchDraft; reload: () => void; edit: (change: Partial<BenchDraft>) => void }) {
  const mine = bench.work?.id === draft.workId ? bench.work : null;
  if (!mine) return null;
  const open = mine.open && Date.parse(mine.until) > now.value;
  const more = async () => {
    const id = emptyDraft('none').workId;
    if ((await put<WorkView>(`/bench/${encodeURIComponent(bench.probe.id)}/out/${id}`, { by: who.value.trim() || mine.by })).ok) edit({ workId: id });
    reload();
  };
  return open
    ? <p class="hint" data-testid="working">{w.working(clock(mine.until, zone.value))}</p>
    : <p class="notice" data-testid="work-over">{w.notWorking} <button type="button" class="slim" onClick={() => void more()}>{w.markAgain}</button></p>;
}

function Done({ probe, signed }: { probe: ProbeInfo; signed: CalibrationView }) {
  return (
    <section class="sheet card" data-testid="signed">
      <h1>{w.done.title}</h1>
      <p><b>{signed.status === 'proposed' ? w.done.waiting : w.done.held}</b></p>
      <p>{w.done.check}</p>
      <div class="inline"><a class="button" href={link('sheet', signed.id)} data-testid="show-sheet">{w.done.sheet}</a><a class="button" href={link('probe', probe.id)}>{w.done.probe}</a>
        {probe.poolId && <a class="button" href={link('check', probe.poolId)}>{words.overview.check}</a>}</div>
    </section>
  );
}

function Guide({ probe }: { probe: ProbeInfo }) {
  const [draft, setDraft] = useState(() => recallDraft(probe.id, probe.measurand));
  const [signed, setSigned] = useState<CalibrationView | null>(null);
  const { data, reload } = usePolled<BenchView>('/bench/' + encodeURIComponent(probe.id), 30_000);
  const head = useRef<HTMLHeadingElement>(null);
  const edit = (change: Partial<BenchDraft>) => setDraft(d => { const next = { ...d, ...change }; keepDraft(probe.id, next); return next; });
  const at = `${draft.step} ${draft.place}`;
  // Whoever reads by ear, or has scrolled down, is taken to the top of the new step.
  useEffect(() => { if (draft.step !== 'start') { head.current?.focus(); scrollTo(0, 0); } }, [at]);
  if (signed) return <Done probe={probe} signed={signed} />;
  // The tables of the buffers come with the first answer; without them and without a server the labels can still be typed.
  const bench = data ?? blank(probe);
  const steps = stepsOf(bench), index = Math.max(0, steps.indexOf(draft.step));
  const to = (step: BenchDraft['step'], place = 0) => edit({ step, place });
  const after = (step: BenchDraft['step']) => steps[steps.indexOf(step) + 1] ?? 'result';
  const points = (list: 'found' | 'points') => {
    const all = draft[list], place = Math.min(draft.place, all.length - 1), point = all[place]!;
    const set = (change: Partial<PointDraft>) => setDraft(d => {
      const changed = d[list].map((p, i) => (i === place ? { ...p, ...change } : p));
      // The bottles of as found are those it is calibrated in, unless somebody says otherwise.
      const next = { ...d, [list]: changed, ...(list === 'found' ? { points: d.points.map((p, i) => (i === place ? { ...p, buffer: changed[i]!.buffer, quinhydrone: changed[i]!.quinhydrone, labelled: changed[i]!.labelled, label: changed[i]!.label, celsius: p.celsius === '' || p.celsius === d.found[i]!.celsius ? changed[i]!.celsius : p.celsius } : p)) } : {}) } as BenchDraft;
      keepDraft(probe.id, next);
      return next;
    });
    const bottle = bottleOf(point);
    const leave = place > 0 ? () => edit({ [list]: all.map((p, i) => (i === place ? emptyPoint(p.buffer, p.quinhydrone) : p)), step: after(list), place: 0 }) : null;
    return (
      <>
        <p>{w[list].lead}</p>
        <h2 data-testid="place">{w.place(place + 1, all.length)}</h2>
        <PointForm key={`${list} ${place}`} name={`${list}-${place}`} bench={bench} point={point} bottle={draft.bottles[bottle] ?? noBottle} onChange={set} onBottle={change => edit({ bottles: { ...draft.bottles, [bottle]: { ...(draft.bottles[bottle] ?? noBottle), ...change } } })}
          onLeave={leave} onNext={() => (place + 1 < all.length ? to(list, place + 1) : to(after(list)))} />
        {list === 'found' && <button type="button" class="quiet-button" data-testid="skip-found" onClick={() => edit({ noFound: true, step: 'work', place: 0 })}>{w.found.skip}</button>}
      </>
    );
  };
  const back = () => {
    if (draft.place > 0) return to(draft.step, draft.place - 1);
    const step = draft.step === 'result' && draft.untouched ? 'work' : steps[index - 1] ?? 'start';
    to(step, step === 'found' || step === 'points' ? draft[step].length - 1 : 0);
  };
  const anew = () => {
    if (!confirm(w.againAsk)) return;
    if (bench.work?.id === draft.workId && bench.work.open) void post(`/bench/${encodeURIComponent(probe.id)}/out/${draft.workId}/back`, { by: who.value.trim() || bench.work.by });
    keepDraft(probe.id, null);
    setDraft(emptyDraft(probe.measurand));
  };
  return (
    <section class="sheet card bench" data-testid="bench" data-step={draft.step}>
      <header class="bench-head"><h1>{w.title(nameOf(probe.id))}</h1><a class="hint" href={link('probe', probe.id)}>{w.done.probe}</a></header>
      {bench.dueAt && draft.step === 'start' && <p class={bench.overdue ? 'notice' : 'hint'} data-testid="bench-due">{(bench.overdue ? w.overdue : w.due)(dayClock(bench.dueAt, zone.value))}, {w.every(fixed(bench.limits.everyDays, 0))}</p>}
      {draft.step !== 'start' && (
        <>
          <div class="bench-steps"><div class="settle-bar" aria-hidden="true"><span style={{ width: `${(100 * index) / (steps.length - 1)}%` }} /></div><span class="hint">{w.stepOf(index, steps.length - 1)}</span></div>
          <h2 ref={head} tabIndex={-1} class="bench-step">{draft.step === 'found' ? w.found.title : draft.step === 'work' ? w.work.title : draft.step === 'points' ? w.points.title : w.result.title}</h2>
          <Working bench={bench} draft={draft} reload={reload} edit={edit} />
        </>)}
      {draft.step === 'start' && <Start bench={bench} draft={draft} onGo={() => { edit({ step: steps[1]!, place: 0, startedAt: serverNow() }); reload(); }} />}
      {draft.step === 'found' && points('found')}
      {draft.step === 'work' && <WorkForm draft={draft} measurand={probe.measurand} panel={probe.origin === 'panel_scaled' && steps.includes('points')} mayLeave={!draft.noFound && draft.found.some(isComplete)} onChange={edit} onNext={() => to(draft.untouched || !steps.includes('points') ? 'result' : 'points')} />}
      {draft.step === 'points' && points('points')}
      {draft.step === 'result' && <ResultForm probe={probe} draft={draft} secondPerson={bench.limits.secondPerson} onChange={edit} onSigned={view => { keepDraft(probe.id, null); setSigned(view); }} />}
      {draft.step !== 'start' && <div class="inline spread bench-foot"><button type="button" data-testid="bench-back" onClick={back}>{w.back}</button><button type="button" class="quiet-button" data-testid="anew" onClick={anew}>{w.again}</button></div>}
    </section>
  );
}

const blank = (probe: ProbeInfo): BenchView => ({
  probe, limits: { everyDays: 30, slopeLow: 85, slopeHigh: 105, offsetMillivolts: 30, orpMillivolts: 15, secondPerson: true }, dueAt: null, overdue: false, work: null, heldSlope: 1, heldOffset: 0, settled: null, lastAt: null,
  buffers: (['technical', 'reference'] as const).flatMap(family => (family === 'technical' ? [['technical4', 4], ['technical7', 7], ['technical10', 10.01]] as const : [['phthalate', 4.01], ['phosphate', 6.86], ['borax', 9.18], ['carbonate', 10.02]] as const)
    .map(([buffer, nominal]) => ({ buffer, family, nominal, table: [] }))), checkSolutions: (['phthalate', 'phosphate'] as const).map(quinhydrone => ({ quinhydrone, table: [] })), spans: [], driftPerDay: null, bySlope: null,
});

/** A probe is calibrated or cleaned, step by step, on a phone in wet hands. */
export function CalibratePage({ id }: { id: string }) {
  const probe = allProbes.value.get(id);
  if (probe) return <div class="bench-page"><Guide key={id} probe={probe} /></div>;
  return <Missing />;
}
