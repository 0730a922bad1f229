import { useState } from 'preact/hooks';
import { put } from '../api/http';
import type { PoolView } from '../contract';
import type { GateView, OperatingState } from '../contract.poolState';
import { uuid7 } from '../format/uuid7';
import { dayClock } from '../format/zone';
import { zone } from '../live/store';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { usePolled } from '../parts/usePolled';
import { words } from '../words';
import { GateList } from './GateList';
import { StateHistory } from './StateHistory';

const w = words.poolState;
type Act = Exclude<OperatingState, 'not_stated'>;
const acts: Act[] = ['open', 'closed', 'covered', 'drained'];

/** A name, a reason, and what else belongs to the act. What was typed stays when it is turned down. */
function ActForm({ poolId, act, leaving, done, cancel }: { poolId: string; act: Act; leaving: OperatingState; done: () => void; cancel: () => void }) {
  const [id, renew] = useState(uuid7);
  const [why, setWhy] = useState('');
  const [forCause, setCause] = useState(false);
  const [refilled, setRefilled] = useState(leaving === 'drained');
  const { busy, errors, run, setErrors } = useAction<GateView>(done);
  const submit = () => {
    const missing = { ...(who.value.trim() ? {} : { by: words.needName }), ...(forCause && !why.trim() ? { why: w.needWhy } : {}) };
    if (Object.keys(missing).length) return setErrors(missing);
    // What is sent anew after a no may be another act: it gets an id of its own.
    const body = { state: act, by: who.value.trim(), why: why.trim() || null, forCause: act !== 'open' && forCause, refilled: act === 'closed' && refilled };
    void run(async () => { const answer = await put<GateView>(`/pools/${poolId}/state/${id}`, body); if (!answer.ok && answer.problem) renew(uuid7()); return answer; });
  };
  return (
    <form class="action" noValidate data-testid={`form-${act}`} onSubmit={e => { e.preventDefault(); submit(); }}>
      {act !== 'open' && <label class="choice"><input type="checkbox" checked={forCause} onChange={e => setCause(e.currentTarget.checked)} /> {w.cause}</label>}
      {act === 'closed' && <label class="choice"><input type="checkbox" checked={refilled} onChange={e => setRefilled(e.currentTarget.checked)} /> {w.refilled} <span class="hint">{w.refilledHint}</span></label>}
      <Field name="state-why" label={w.why} error={errors['why']}><textarea rows={2} value={why} {...tie('state-why', errors['why'])} onInput={e => setWhy(e.currentTarget.value)} /></Field>
      <NameField name="state-by" error={errors['by']} />
      <OtherRemarks errors={errors} shown={['why', 'by']} />
      <div class="inline"><button type="submit" class="primary" disabled={busy} data-testid={`submit-${act}`}>{w.acts[act]}</button><button type="button" onClick={cancel}>{w.cancel}</button></div>
    </form>
  );
}

function Before({ poolId, since }: { poolId: string; since: string | null }) {
  const [open, set] = useState(false);
  return <details onToggle={e => set(e.currentTarget.open)} data-testid="state-before"><summary>{w.history}</summary>{open && <StateHistory key={since} poolId={poolId} />}</details>;
}

/** How the pool is run, the gate, and the acts of a person. */
export function StateCard({ view }: { view: PoolView }) {
  const [act, choose] = useState<Act | null>(null);
  const o = view.operation;
  const gate = usePolled<GateView>(`/pools/${view.id}/gate`, 15_000);
  if (!o) return null;
  return (
    <section class="sheet card" data-testid="state-card">
      <h2>{w.title}</h2>
      <p><b data-testid="operation">{w.states[o.state]}{o.forCause && `, ${w.forCause}`}</b>
        {o.since && <span class="hint block">{w.since} {dayClock(o.since, zone.value)}{o.by && `, ${w.by(o.by)}`}</span>}{o.why && <span class="block pre">{o.why}</span>}</p>
      <div class="inline">{acts.filter(a => a !== o.state).map(a => <button key={a} type="button" aria-expanded={act === a} data-testid={`act-${a}`} onClick={() => choose(act === a ? null : a)}>{w.acts[a]}</button>)}</div>
      {act && <ActForm key={act} poolId={view.id} act={act} leaving={o.state} done={() => { choose(null); gate.reload(); }} cancel={() => choose(null)} />}
      {(o.state !== 'open' || act === 'open') && (gate.data ? <GateList gate={gate.data} /> : gate.failed && <p class="hint">{w.unreachable}</p>)}
      {o.state !== 'not_stated' && <Before poolId={view.id} since={o.since} />}
    </section>
  );
}
