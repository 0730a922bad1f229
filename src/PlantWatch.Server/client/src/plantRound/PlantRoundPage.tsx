import { useEffect, useState } from 'preact/hooks';
import type { PlantRoundRequest, PlantRoundView, RoundWord } from '../contract.plantRound';
import { uuid7 } from '../format/uuid7';
import { clock, dayClock } from '../format/zone';
import { now, serverNow } from '../live/clock';
import { site, zone } from '../live/store';
import { OfflineHelp } from '../offline/OfflineHelp';
import type { Item as Kept } from '../outbox/outbox';
import { flushRounds, keptRounds, roundOutcomes, rounds } from '../outbox/rounds';
import { Remark, tie } from '../parts/Field';
import { MendLine } from '../parts/MendLine';
import { focusFirstWrong, stillSaid } from '../parts/mending';
import { PoolGlyph, TickGlyph, WarnGlyph } from '../parts/Glyph';
import { usePolled } from '../parts/usePolled';
import { words } from '../words';
import { saidOf } from '../check/fields';
import { buildRound, itemOf, type Errors } from './build';
import { heardAt, wordNow } from './heard';
import { Item } from './Item';
import { draftOf, empty, isTyped, keepDraft, known, tookRounds, typedAgain, typedIn, type Draft } from './store';

const w = words.plantRound;

/** Where the round stands. What the device kept says when it was heard, and of another day's says no more than who walked last. */
function Head({ view, word, heard }: { view: PlantRoundView; word: RoundWord | null; heard: string | null }) {
  return (
    <p class="hint" data-testid="round-stands" data-word={word ?? 'unknown'}>
      {heard !== null && <>{w.asHeard}{heard && `, ${heard}`}: </>}{word && <>{word !== 'walked' && <PoolGlyph state="due" />} <b>{w.words[word]}</b>{word === 'due' && ` ${w.dueAt(clock(view.dueAt, zone.value))}`}{word === 'overdue' && `, ${w.wasDue(clock(view.dueAt, zone.value))}`}; </>}{view.walkedAt && view.by ? w.walkedBy(view.by, dayClock(view.walkedAt, zone.value)) : w.never}
    </p>
  );
}

/** What became of a round: what was found, and what to do. */
function Result({ id, request, onAgain, onMend, onWalked }: { id: string; request: PlantRoundRequest; onAgain: () => void; onMend: (errors: Errors) => void; onWalked: () => void }) {
  const outcome = roundOutcomes.value.get(id);
  useEffect(() => {
    if (outcome?.kind === 'answered') onWalked();
    if (outcome?.kind !== 'refused') return;
    rounds.drop(id);
    const errors: Errors = {};
    for (const e of outcome.problem.errors) errors[itemOf(e.field, request)] = e.text;
    onMend(Object.keys(errors).length > 0 ? errors : { form: outcome.problem.title });
  }, [outcome]);
  const out = outcome?.kind === 'answered' ? outcome.answer.lines.filter(l => l.out) : [];
  const says = outcome?.kind === 'answered' ? outcome.answer.lines.filter(l => l.says.length > 0) : [];
  return (
    <section class="sheet answer" role="status" data-testid="round-answer" data-outcome={outcome?.kind ?? 'sending'}>
      {outcome === undefined && <h2>{words.check.sending}</h2>}
      {outcome?.kind === 'unreachable' && <h2 class="mark"><WarnGlyph />{w.waiting}</h2>}
      {outcome?.kind === 'answered' && <>
        <h2 class="mark good"><TickGlyph />{w.saved}</h2>
        {out.length === 0 && <p>{w.allWell}</p>}
        <ul class="why">{says.map(l => <li key={l.itemId} data-testid={`says-${l.itemId}`}>{l.out && <WarnGlyph />} <b>{l.name}</b>{l.says.map((s, i) => <span key={i} class="block">{s.text}</span>)}</li>)}</ul>
        {out.length > 0 && <p><a class="button" href="#/jobs">{w.jobs}</a></p>}</>}
      <button type="button" class="primary" data-testid="round-again" onClick={onAgain}>{w.again}</button>
    </section>
  );
}

function Form({ view, answered, again, onWalked }: { view: PlantRoundView; answered: boolean; again: Again | null; onWalked: () => void }) {
  const [draft, setDraft] = useState<Draft>(() => again?.draft ?? draftOf(view.circuit));
  const [said, setSaid] = useState<{ errors: Errors; draft: Draft }>({ errors: {}, draft });
  const errors = stillSaid(said.errors, field => typedIn(draft, field) !== typedIn(said.draft, field));
  const mark = (wrong: Errors, of = draft) => { setSaid({ errors: wrong, draft: of }); if (Object.keys(wrong).length > 0) focusFirstWrong(); };
  const [sent, setSent] = useState<{ id: string; request: PlantRoundRequest } | null>(null);
  const [unkept, setUnkept] = useState(again !== null && !again.kept);
  const word = wordNow(view, known.value, answered, now.value, zone.value);
  const edit = (change: Partial<Draft>) => { const next = { ...draft, ...change }; setDraft(next); setUnkept(!keepDraft(view.circuit, next)); };
  const submit = () => {
    const { request, errors: wrong } = buildRound(view, draft, serverNow());
    mark(wrong);
    if (Object.keys(wrong).length > 0) return;
    const id = uuid7();
    try { rounds.put(id, request, Date.now()); } catch { return mark({ form: w.storageFull }); }
    keepDraft(view.circuit, null);
    setSent({ id, request });
    scrollTo(0, 0);
    void flushRounds();
  };
  // Refused, what was typed is still here: it goes back under the eyes of whoever typed it.
  const mend = (wrong: Errors) => { const walkedAt = sent?.request.walkedAt ?? null; edit({ walkedAt }); setSent(null); mark(wrong, { ...draft, walkedAt }); };
  if (sent) return <Result id={sent.id} request={sent.request} onWalked={onWalked} onMend={mend} onAgain={() => { setDraft(empty); mark({}); setSent(null); }} />;
  const pools = site.value?.circuits.find(c => c.id === view.circuit)?.pools ?? [], holds = pools.length > 0 ? pools.reduce((sum, p) => sum + p.volumeM3, 0) : null;
  return (
    <form class="check-form" noValidate onSubmit={e => { e.preventDefault(); submit(); }} data-testid="plant-round-form">
      <section class="sheet form-part">
        <h2>{view.name}</h2><Head view={view} word={word} heard={answered ? null : heardAt(known.value.at, now.value, zone.value)} />
        {view.items.map(item => <Item key={item.id} item={word === null ? { ...item, wanted: true } : item} holds={holds} draft={draft} error={errors[item.id]} onEdit={edit} />)}
      </section>
      <section class="sheet form-part">
        <div class={`field ${errors['by'] ? 'wrong' : ''}`}><label class="label" for="f-round-by">{w.who}</label><input class="tall" type="text" autocomplete="off" value={draft.by} {...tie('round-by', errors['by'])} onInput={e => edit({ by: e.currentTarget.value })} /><Remark name="round-by" text={errors['by']} /></div>
        <div class="field"><label class="label" for="f-round-note">{w.note}</label><textarea rows={2} value={draft.note} {...tie('round-note')} onInput={e => edit({ note: e.currentTarget.value })} /></div>
        {draft.walkedAt && <p class="hint" data-testid="round-keeps-time">{words.outbox.keepsTime(dayClock(draft.walkedAt, zone.value))} <button type="button" class="slim" data-testid="round-time-now" onClick={() => edit({ walkedAt: null })}>{words.outbox.timeNow}</button></p>}
        <Remark name="form" text={errors['form']} />
        {unkept && <p class="notice bad" role="alert">{w.storageFull}</p>}
        <p class="hint">{w.draft}</p>
      </section>
      <MendLine errors={errors} />
      <div class="thumb"><button type="submit" class="primary" data-testid="save-plant-round">{w.save}</button></div>
    </form>
  );
}

/** A refused round back in the form; whether the device keeps it as a draft too. */
interface Again { id: string; draft: Draft; kept: boolean }

/** The thing that was read, by its name; empty for the whole. */
const nameOfItem = (request: PlantRoundRequest, field: string): string =>
  known.value.views.find(v => v.circuit === request.circuit)?.items.find(x => x.id === itemOf(field, request))?.name ?? '';

/** Rounds on this device that the server has not taken. */
function Waiting({ onEdit }: { onEdit: (item: Kept<PlantRoundRequest>) => void }) {
  const items = keptRounds.value;
  if (items.length === 0) return null;
  return (
    <section class="sheet outbox" data-testid="rounds-waiting"><h2>{words.outbox.title}</h2>
      <ul>{items.map(i => <li key={i.id}><p>{dayClock(i.request.walkedAt, zone.value)}, {i.request.by}: {i.refusal ? <><b>{w.refused}.</b> {saidOf(i.refusal.errors.map(e => ({ name: nameOfItem(i.request, e.field), text: e.text }))) || i.refusal.title}</> : words.outbox.waiting}</p>
        {i.refusal && <div class="inline">{known.value.views.some(v => v.circuit === i.request.circuit) && <button type="button" data-testid="round-edit" onClick={() => onEdit(i)}>{words.outbox.edit}</button>}<button type="button" onClick={() => { if (confirm(w.dropSure)) rounds.drop(i.id); }}>{words.outbox.drop}</button></div>}</li>)}</ul>
    </section>
  );
}

/** The daily round through a plant room. */
export function PlantRoundPage({ circuit }: { circuit: string | null }) {
  const { data, failed, reload } = usePolled<PlantRoundView[]>('/plant-rounds', 60_000);
  useEffect(() => { if (data) tookRounds(data, serverNow()); }, [data]);
  const [chosen, setChosen] = useState(circuit), [again, setAgain] = useState<Again | null>(null);
  const choose = (next: string) => { setAgain(null); setChosen(next); };
  const edit = (item: Kept<PlantRoundRequest>) => {
    const of = item.request.circuit, draft = typedAgain(item.request);
    if (isTyped(draftOf(of)) && !confirm(words.check.clearSure)) return;
    rounds.drop(item.id);
    setAgain({ id: item.id, draft, kept: keepDraft(of, draft) });
    setChosen(of);
  };
  const views = known.value.views, view = views.find(v => v.circuit === chosen) ?? views[0];
  return (
    <div class="narrow">
      <h1>{w.title}</h1><p class="hint">{w.lead}</p>
      <Waiting onEdit={edit} />
      {views.length > 1 && <label class="inline">{w.circuit} <select class="tall" value={view?.circuit ?? ''} data-testid="choose-circuit" onChange={e => choose(e.currentTarget.value)}>{views.map(v => <option key={v.circuit} value={v.circuit}>{v.name}</option>)}</select></label>}
      {view ? <Form key={`${view.circuit} ${again?.id ?? ''}`} view={view} answered={data !== null && !failed} again={again} onWalked={reload} />
        : data === null && !failed ? <p class="empty unfilled" role="status">{words.loading}</p> : <p class="empty">{w.none}</p>}
      <nav class="sheet card" aria-label={words.round.also}><ul class="also"><li><a href="#/pumps">{w.wash}</a></li><li><a href="#/jobs">{w.jobs}</a></li><li><a href="#/chemicals">{w.deliveries}</a></li></ul></nav>
      <OfflineHelp />
    </div>
  );
}
