import { useEffect, useState } from 'preact/hooks';
import type { CheckRequest, Problem } from '../contract';
import { uuid7 } from '../format/uuid7';
import { serverNow } from '../live/clock';
import { measures, site, zone } from '../live/store';
import { checks, flushChecks, outcomes, sendCheck } from '../outbox/checks';
import { focusFirstWrong, stillSaid } from '../parts/mending';
import { who } from '../parts/person';
import { words } from '../words';
import { AnswerView } from './AnswerView';
import { build, errorsOf, type Errors } from './build';
import { CheckForm } from './CheckForm';
import { clearDraft, draft, edit, isTouched, typedIn, type Draft } from './draft';
import { toMend } from './mend';
import { OutboxList } from './OutboxList';

interface Sent { id: string; draft: Draft; request: CheckRequest }

export function CheckPage({ poolId }: { poolId: string | null }) {
  const [said, setSaid] = useState<{ errors: Errors; draft: Draft; who: string }>({ errors: {}, draft: draft.peek(), who: who.peek() });
  const setErrors = (errors: Errors) => setSaid({ errors, draft: draft.peek(), who: who.peek() });
  const [banner, setBanner] = useState<string | null>(null);
  const [sent, setSent] = useState<Sent | null>(null);

  useEffect(() => { choosePool(poolId); }, [poolId, site.value]);

  const back = (request: CheckRequest, problem: Problem) => {
    const said = errorsOf(problem.errors, request);
    setErrors(said);
    setBanner(`${words.answer.refused}. ${Object.keys(said).length > 0 ? words.answer.refusedMore : problem.title || words.answer.refusedBare}`);
    setSent(null);
    focusFirstWrong();
  };

  // Refused while the page is open: back into the form it goes, out of the outbox, so that it exists once.
  const outcome = sent ? outcomes.value.get(sent.id) : undefined;
  useEffect(() => {
    if (!sent || outcome?.kind !== 'refused') return;
    edit(sent.draft);
    checks.drop(sent.id);
    back(sent.request, outcome.problem);
  }, [outcome]);

  const submit = async () => {
    const built = build(draft.value, who.value, zone.value, serverNow(), measures);
    setErrors(built.errors);
    setBanner(null);
    if (Object.keys(built.errors).length > 0) return focusFirstWrong();
    const id = uuid7();
    try {
      checks.put(id, built.request, Date.now());
    } catch {
      const direct = await sendCheck(id, built.request);
      outcomes.value = new Map(outcomes.value).set(id, direct);
      if (direct.kind === 'refused') return back(built.request, direct.problem);
      if (direct.kind === 'unreachable') return setBanner(words.check.storageFull);
    }
    setSent({ id, draft: draft.value, request: built.request });
    clearDraft();
    scrollTo(0, 0);
    void flushChecks();
  };

  // Refused before, here or on a round: it comes with what was said of it.
  const again = toMend.value;
  useEffect(() => {
    if (!again) return;
    toMend.value = null;
    if (again.refusal) back(again.request, again.refusal); else setSent(null);
  }, [again]);

  const errors = stillSaid(said.errors, field => typedIn(draft.value, who.value, field) !== typedIn(said.draft, said.who, field));
  const pools = site.value?.circuits.flatMap(c => c.pools) ?? [];
  return (
    <div class="narrow">
      <h1>{words.check.title}</h1>
      <p><a class="line-link" href="#/round" data-testid="to-round">{words.round.toRound}</a></p>
      <OutboxList except={sent?.id ?? null} />
      {sent ? <AnswerView outcome={outcome} onAnother={() => { setSent(null); setErrors({}); scrollTo(0, 0); }} />
        : pools.length === 0 ? <p class="empty">{words.check.noPools}</p>
          : <CheckForm errors={errors} banner={Object.keys(said.errors).length > 0 && Object.keys(errors).length === 0 ? null : banner} onSubmit={() => void submit()} />}
    </div>
  );
}

/** The pool of the address wins while nothing was typed; a draft of another pool is somebody's work and stays. */
function choosePool(asked: string | null): void {
  const pools = site.value?.circuits.flatMap(c => c.pools) ?? [];
  const known = (id: string | null) => pools.some(p => p.id === id);
  const d = draft.value;
  if (known(asked) && d.poolId !== asked && !(isTouched(d) && known(d.poolId))) edit({ poolId: asked! });
  else if (!known(d.poolId) && pools.length === 1) edit({ poolId: pools[0]!.id });
}
