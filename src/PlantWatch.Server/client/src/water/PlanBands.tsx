import type { DosingPlanView, PlanFigureView } from '../contract.plan';
import { decimalsOf, fixed, signed, unitOf } from '../format/number';
import { WarnGlyph } from '../parts/Glyph';
import { words } from '../words';

/** A figure as people write it; the saturation index has a sign. */
export const writtenFigure = (figure: PlanFigureView['figure'], value: number): string =>
  figure === 'saturation_index' ? signed(value, 2) : fixed(value, decimalsOf(figure));

const unit = (figure: PlanFigureView['figure']) => figure === 'saturation_index' || figure === 'ph' ? '' : unitOf(figure);

function band(f: PlanFigureView): string {
  const say = (v: number) => writtenFigure(f.figure, v);
  if (f.low !== null && f.high !== null) return words.plan.between(say(f.low), say(f.high));
  return f.low !== null ? words.plan.atLeast(say(f.low)) : f.high !== null ? words.plan.atMost(say(f.high)) : '';
}

function sources(f: PlanFigureView): string {
  const ends = [f.low !== null ? f.lowSource ?? '' : null, f.high !== null ? f.highSource ?? '' : null].filter((s): s is string => s !== null);
  return [...new Set(ends)].map(s => s === '' ? words.plan.practice : words.plan.from(s)).join('; ');
}

/** Each figure with its band, how it stands, and what the plan makes of it. */
export function PlanBands({ plan }: { plan: DosingPlanView }) {
  const then = plan.figures.some(f => f.then !== null);
  return (
    <section class="sheet card" data-testid="plan-bands">
      <h2>{words.plan.bands}</h2>
      <table class="lines plan-bands">
        <thead><tr><th scope="col">{words.plan.figure}</th><th scope="col" class="n">{words.plan.now}</th><th scope="col">{words.plan.band}</th>{then && <th scope="col" class="n">{words.plan.then}</th>}</tr></thead>
        <tbody>{plan.figures.map(f => (
          <tr key={f.figure} data-testid={'band-' + f.figure} data-standing={f.standing}>
            <th scope="row">{words.plan.figures[f.figure]}{unit(f.figure) && <span class="under block">{unit(f.figure)}</span>}</th>
            <td class="n">{f.now === null ? '\u2013' : writtenFigure(f.figure, f.now)}{f.u ? <span class="under block">{words.plan.plusMinus(fixed(f.u, f.figure === 'saturation_index' ? 2 : decimalsOf(f.figure)))}</span> : null}</td>
            <td>{band(f)} <span class="under block">{sources(f)}</span>
              {f.standing !== 'inside' && <span class={f.standing === 'below' || f.standing === 'above' ? 'beyond' : 'under block'}>{(f.standing === 'below' || f.standing === 'above') && <WarnGlyph />}{words.plan.standing[f.standing]}</span>}</td>
            {then && <td class="n">{f.then === null ? '\u2013' : writtenFigure(f.figure, f.then)}</td>}
          </tr>))}</tbody>
      </table>
      <p class="hint">{words.plan.volume(plan.volume.text)}</p>
    </section>
  );
}
