import { useState } from 'preact/hooks';
import type { DoseFigures } from '../contract.dose';
import type { DosingPlanView, PlanStepView } from '../contract.plan';
import { fixed, signed } from '../format/number';
import { link } from '../router';
import { words } from '../words';

/** The water a step leads to, in the figures that the next test will show. */
function Foretold({ water }: { water: DoseFigures }) {
  const rows: [string, string][] = [
    ['pH', fixed(water.ph, 2)], [words.plan.figures.total_alkalinity, fixed(water.alkalinity, 0)], [words.plan.figures.calcium_hardness, fixed(water.calcium, 0)],
    [words.plan.figures.free_chlorine, fixed(water.freeChlorine, 1)],
  ];
  if (water.saturation !== null) rows.push([words.plan.figures.saturation_index, signed(water.saturation, 2)]);
  return <span class="foretold"><span>{words.plan.predicted}:</span>{rows.map(([name, value]) => <span key={name}>{name} {value}</span>)}</span>;
}

const nameOf = (s: PlanStepView): string =>
  s.product?.name ?? (s.kind === 'aerate' ? words.plan.aerate : s.kind === 'let_chlorine_fall' ? words.plan.letChlorineFall : words.plan.dilute);

const amountOf = (s: PlanStepView): string => s.litres ? `${s.litres.text} (${s.mass?.text ?? ''})` : s.mass?.text ?? '';

function Step({ step, ticked, tick, at }: { step: PlanStepView; ticked: boolean; tick: () => void; at: number }) {
  const p = step.product, care = [...step.equipment, ...step.precautions], id = 'step-' + at;
  return (
    <li class={ticked ? 'ticked' : ''} data-testid={id}>
      <input type="checkbox" id={id} checked={ticked} onChange={tick} aria-label={words.plan.done(`${nameOf(step)} ${amountOf(step)}`)} />
      <label class="what" for={id}>{amountOf(step) && <b>{amountOf(step)}</b>}<span class="name">{nameOf(step)}</span><span class="under">{words.plan.part(step.part, step.parts)}</span></label>
      <div class="body">
        {p && <span class="under">{words.plan.strength(fixed(p.strengthPercent, 1), p.ageDays === null ? words.plan.ageUnknown : words.plan.ageDays(p.ageDays))}</span>}
        {step.says.map(s => <span key={s.code}>{s.text}</span>)}
        <span class="wait">{step.waitHours === null ? words.plan.waitTest : words.plan.wait(fixed(step.waitHours, step.waitHours % 1 ? 1 : 0))}</span>
        <Foretold water={step.after} />
        {care.length > 0 && <details><summary>{words.plan.care}</summary><ul class="plain">{care.map(s => <li key={s.code + s.text}>{s.text}</li>)}</ul></details>}
      </div>
    </li>
  );
}

/** The steps as a list to tick, in the order in which they are safe. */
export function PlanSteps({ plan, pool }: { plan: DosingPlanView; pool: string }) {
  const [done, setDone] = useState<ReadonlySet<number>>(new Set());
  const tick = (i: number) => setDone(d => { const next = new Set(d); if (!next.delete(i)) next.add(i); return next; });
  const d = plan.dilution;
  if (plan.steps.length === 0 && !d) return null;
  return (
    <section class="sheet card" data-testid="plan-steps">
      <h2>{words.plan.steps}</h2>
      {plan.cost !== null && plan.cost > 0 ? <p class="hint">{words.plan.cost(fixed(plan.cost, 2))}</p> : plan.mass && <p class="hint">{words.plan.mass(plan.mass.text)}</p>}
      <ol class="plan-steps">
        {d && <li class={done.has(-1) ? 'ticked' : ''} data-testid="step-dilute">
          <input type="checkbox" id="step-dilute" checked={done.has(-1)} onChange={() => tick(-1)} aria-label={words.plan.done(words.plan.dilute)} />
          <label class="what" for="step-dilute"><b>{fixed(d.percent, 0)} %</b><span class="name">{words.plan.dilute}</span></label>
          <div class="body"><span>{words.plan.dilution(fixed(d.percent, 0), d.drain.text, d.overflow.text)}</span><span class="wait">{words.plan.waitTest}</span>{d.after && <Foretold water={d.after} />}</div>
        </li>}
        {plan.steps.map((s, i) => <Step key={i} step={s} at={i} ticked={done.has(i)} tick={() => tick(i)} />)}
      </ol>
      <p class="hint">{words.plan.tickHint} <a href={link('dose', pool)}>{words.plan.dosePage}</a>.</p>
    </section>
  );
}
