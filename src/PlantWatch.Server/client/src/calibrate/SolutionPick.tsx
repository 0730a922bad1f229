import type { BenchView, Row } from '../contract.bench';
import { fixed } from '../format/number';
import { serverNow } from '../live/clock';
import { Field, tie } from '../parts/Field';
import { words } from '../words';
import { bottleOf, type Bottle, type PointDraft } from './draft';
import { numberOf, valueAt } from './sheet';

const w = words.calibrate;

export const tableOf = (bench: BenchView, p: PointDraft): Row[] =>
  bench.buffers.find(b => b.buffer === p.buffer)?.table ?? bench.checkSolutions.find(s => s.quinhydrone === p.quinhydrone)?.table ?? [];

/** What the solution is worth at its temperature; null where that is not known. */
export const knownOf = (bench: BenchView, p: PointDraft): number | null => (p.labelled ? numberOf(p.label) : valueAt(tableOf(bench, p), numberOf(p.celsius)));

/** Which bottle, how warm it is, and what that makes of it; lot and expiry where they are wanted. */
export function SolutionPick({ bench, point, bottle, errors, name, onChange, onBottle }: {
  bench: BenchView; point: PointDraft; bottle: Bottle; errors: Record<string, string>; name: string; onChange: (change: Partial<PointDraft>) => void; onBottle: (change: Partial<Bottle>) => void;
}) {
  const ph = bench.probe.measurand === 'ph', known = knownOf(bench, point), warm = numberOf(point.celsius) !== null;
  const choice = (key: string, text: string, checked: boolean, change: Partial<PointDraft>) => (
    <label key={key} class="choice"><input type="radio" name={'bottle-' + name} checked={checked} data-testid={`bottle-${key}`} onChange={() => onChange({ ...change, settled: null })} />{text}</label>);
  return (
    <>
      <Field name="solution" label={w.which} error={errors['solution']} hint={ph ? w.trap : w.orpReference} group>
        {ph && (['technical', 'reference'] as const).map(family => (
          <div key={family} class="bottle-family"><span class="label">{w.family[family]}</span>
            <div class="bottles">{bench.buffers.filter(b => b.family === family).map(b => choice(b.buffer, fixed(b.nominal, 2), !point.labelled && point.buffer === b.buffer, { buffer: b.buffer, labelled: false }))}</div></div>))}
        {!ph && <div class="bottles wide-bottles">{bench.checkSolutions.map(s => choice(s.quinhydrone, w.quinhydrone[s.quinhydrone], !point.labelled && point.quinhydrone === s.quinhydrone, { quinhydrone: s.quinhydrone, labelled: false }))}</div>}
        <div class="bottles wide-bottles">{choice('label', w.other, point.labelled, { labelled: true })}</div>
      </Field>
      {point.labelled && <Field name="label" label={w.labelValue(ph ? 'pH' : 'mV')} error={errors['label']}><input type="text" inputMode="decimal" class="big" value={point.label} {...tie('label', errors['label'])} onInput={e => onChange({ label: e.currentTarget.value })} /></Field>}
      <Field name="celsius" label={w.celsius} error={errors['celsius']}
        hint={known !== null ? <b data-testid="known">{w.is(`${ph ? 'pH ' : ''}${fixed(known, ph ? 2 : 0)}${ph ? '' : ' mV'}`)}</b> : warm && !point.labelled ? w.outOfTable : undefined}>
        <input type="text" inputMode="decimal" class="big" value={point.celsius} {...tie('celsius', errors['celsius'])} onInput={e => onChange({ celsius: e.currentTarget.value })} />
      </Field>
      <details class="bottle-more"><summary>{w.bottle}{bottle.lot && `: ${bottle.lot}`}</summary>
        <div class="two"><Field name="lot" label={w.lot}><input type="text" value={bottle.lot} {...tie('lot')} onInput={e => onBottle({ lot: e.currentTarget.value })} /></Field>
          <Field name="expires" label={w.expires}><input type="date" value={bottle.expires} {...tie('expires')} onInput={e => onBottle({ expires: e.currentTarget.value })} /></Field></div>
      </details>
      {bottle.expires !== '' && Date.parse(bottle.expires) + 86_400_000 < serverNow() && <p class="notice" role="alert" data-testid="expired">{bottleOf(point) && w.expired}</p>}
    </>
  );
}
