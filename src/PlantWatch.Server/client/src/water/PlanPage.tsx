import { useEffect, useRef, useState } from 'preact/hooks';
import { post } from '../api/http';
import type { PoolInfo, Problem, Said } from '../contract';
import type { DosingPlanRequest, DosingPlanView } from '../contract.plan';
import type { WhatIfWater } from '../contract.whatIf';
import { readTyped } from '../format/number';
import { typedUnit } from '../format/units';
import { onLive } from '../live/connection';
import { Age } from '../parts/Age';
import { Know } from '../parts/Know';
import { words } from '../words';
import { inputKinds, type Edits } from './inputs';
import { PlanBands } from './PlanBands';
import { PlanSteps } from './PlanSteps';
import { WaterFrame } from './WaterFrame';

/** Asks anew when the wish changes and when the server is back. A plan under the hand does not move by itself. */
function usePlan(pool: string, request: DosingPlanRequest) {
  const [held, hold] = useState<{ plan: DosingPlanView | null; problem: Problem | null; failed: boolean }>({ plan: null, problem: null, failed: false });
  const key = JSON.stringify(request);
  const newest = useRef(key);
  newest.current = key;
  useEffect(() => {
    let answered = false;
    const ask = async () => {
      const answer = await post<DosingPlanView>(`/pools/${encodeURIComponent(pool)}/dosing-plan`, request);
      if (newest.current !== key) return;
      answered = answer.ok;
      hold(answer.ok ? { plan: answer.value, problem: null, failed: false } : h => ({ plan: h.plan, problem: answer.problem, failed: answer.problem === null }));
    };
    void ask();
    return onLive(() => { if (!answered) void ask(); });
  }, [pool, key]);
  return held;
}

const List = ({ title, items, testid }: { title: string; items: Said[]; testid: string }) => items.length === 0 ? null : (
  <section class="sheet card" data-testid={testid}><h2>{title}</h2><ul class="plain">{items.map(s => <li key={s.code + s.text}>{s.text}</li>)}</ul></section>);

const fillKinds = inputKinds.filter(k => !['temperature', 'cyanuricAcid', 'freeChlorine'].includes(k.key));

/** The fill water; null until all of it is typed. */
function fillOf(edits: Edits): WhatIfWater | null {
  const out: WhatIfWater = { ph: null, temperature: null, totalAlkalinity: null, calciumHardness: null, dissolvedSolids: null, cyanuricAcid: null, freeChlorine: null };
  for (const k of fillKinds) {
    const typed = readTyped(edits[k.key] ?? '');
    if (typed.kind !== 'number') return null;
    out[k.key] = typed.value;
  }
  return out;
}

function Plan({ pool }: { pool: PoolInfo }) {
  const [clear, setClear] = useState<boolean | null>(null);
  const [wish, setWish] = useState<DosingPlanRequest['wish']>('fewer_goes');
  const [edits, setEdits] = useState<Edits>({});
  const [fill, setFill] = useState<WhatIfWater | null>(null);
  const { plan, problem, failed } = usePlan(pool.id, { water: null, fill, bathersOut: clear, wish });
  const typed = fillOf(edits);
  return (
    <div class="plan-page">
      <div class="stack">
        <section class="sheet card">
          <div class="card-head"><p class="plan-head" data-testid="plan-headline" role="status">{failed ? words.plan.unreachable : plan?.headline ?? words.plan.working}</p>{plan && <Know of={words.water.titles.plan} tell={() => ({ ...words.know.plan, age: <Age at={plan.at} /> })} testId="plan" />}</div>
          {problem && <p class="notice" role="alert">{words.plan.wrong} {problem.errors.map(e => e.text).join(' ')}</p>}
          <fieldset class="field"><legend class="label">{words.plan.bathers}</legend><div class="choices">
            {([[true, words.plan.clear], [false, words.plan.notClear]] as const).map(([value, name]) => (
              <label class="choice" key={name}><input type="radio" name="plan-clear" checked={clear === value} data-testid={value ? 'plan-clear' : 'plan-not-clear'} onChange={() => setClear(value)} />{name}</label>))}
          </div></fieldset>
          <fieldset class="field"><legend class="label">{words.plan.wish}</legend><div class="choices">
            {([['fewer_goes', words.plan.fewer], ['least_cost', words.plan.cheapest]] as const).map(([value, name]) => (
              <label class="choice" key={value}><input type="radio" name="plan-wish" checked={wish === value} data-testid={'wish-' + value} onChange={() => setWish(value)} />{name}</label>))}
          </div></fieldset>
        </section>
        {plan && <List title={words.plan.refused} items={plan.refused} testid="plan-refused" />}
        {plan && <PlanBands plan={plan} />}
        <section class="sheet card">
          <details><summary>{words.plan.fill}</summary>
            <p class="hint">{words.plan.fillLead}</p>
            <div class="plan-fill">{fillKinds.map(k => (
              <div class="field" key={k.key}><label class="label" for={'fill-' + k.key}>{words.measurand[k.measurand]} <span class="unit">{typedUnit(k.measurand)}</span></label>
                <input id={'fill-' + k.key} type="text" inputMode="decimal" autocomplete="off" value={edits[k.key] ?? ''} onInput={e => setEdits({ ...edits, [k.key]: e.currentTarget.value })} /></div>))}</div>
            <button type="button" disabled={typed === null} data-testid="ask-fill" onClick={() => setFill(typed)}>{words.plan.askFill}</button>
          </details>
        </section>
      </div>
      <div class="stack">
        {plan && <>
          <PlanSteps key={plan.at} plan={plan} pool={pool.id} />
          <List title={words.plan.says} items={plan.says} testid="plan-says" />
          <List title={words.plan.leftOut} items={plan.leftOut.flatMap(l => l.because)} testid="plan-left-out" />
          <List title={words.plan.always} items={plan.always} testid="plan-always" />
        </>}
      </div>
    </div>
  );
}

export function PlanPage({ id }: { id: string }) {
  return <WaterFrame poolId={id} page="plan">{pool => <><p class="water-lead">{words.plan.lead}</p><Plan key={pool.id} pool={pool} /></>}</WaterFrame>;
}
