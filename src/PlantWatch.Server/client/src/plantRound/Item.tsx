import type { RoundItemView } from '../contract.plantRound';
import { ageAt, span } from '../format/age';
import { fixed, readTyped, unitText } from '../format/number';
import { now } from '../live/clock';
import { Remark, tie } from '../parts/Field';
import { WarnGlyph } from '../parts/Glyph';
import { words } from '../words';
import type { Draft } from './store';

const w = words.plantRound;

const figure = (v: number) => fixed(v, v % 1 === 0 ? 0 : Math.abs(v) < 10 ? 2 : 1);
const unit = (item: RoundItemView) => item.unit === 'm3' ? 'm\u00b3' : unitText(item.unit);

function limits(item: RoundItemView): string {
  if (item.low === null && item.high === null) return '';
  return w.limits(item.low !== null && item.high !== null ? `${figure(item.low)}\u2009\u2013\u2009${figure(item.high)} ${unit(item)}` : item.low !== null ? `\u2265 ${figure(item.low)} ${unit(item)}` : `\u2264 ${figure(item.high!)} ${unit(item)}`);
}

/** Said while it is typed, quietly: beyond what is in order, or a meter that goes backwards. */
function quiet(item: RoundItemView, text: string): string | null {
  const typed = readTyped(text);
  if (typed.kind !== 'number') return null;
  if (item.low !== null && typed.value < item.low) return words.below(figure(item.low));
  if (item.high !== null && typed.value > item.high) return words.above(figure(item.high));
  return item.kind === 'meter' && item.lastValue !== null && typed.value < item.lastValue ? w.meterBack : null;
}

/** One thing that is looked at: a number, or in order or not. */
export function Item({ item, draft, error, onEdit }: { item: RoundItemView; draft: Draft; error: string | undefined; onEdit: (change: Partial<Draft>) => void }) {
  const value = draft.values[item.id] ?? '', works = draft.works[item.id] ?? '', says = quiet(item, value);
  const age = ageAt(now.value, item.lastAt);
  const last = age === null ? null : w.last(item.lastWorks === null ? `${figure(item.lastValue ?? 0)} ${unit(item)}` : item.lastWorks ? w.inOrder : w.notInOrder, span(age));
  const hint = [limits(item), last, item.wanted ? null : w.notToday].filter(Boolean).join('; ');
  const name = 'item-' + item.id;
  if (item.kind === 'works') return (
    <fieldset class="field" data-testid={name}><legend class="label">{item.name}</legend>
      <div class="choices">{([['yes', w.inOrder], ['no', w.notInOrder], ['', w.notLooked]] as const).map(([v, text]) => (
        <label key={v} class="choice"><input type="radio" name={name} checked={works === v} data-testid={`${name}-${v || 'not'}`} onChange={() => onEdit({ works: { ...draft.works, [item.id]: v } })} />{text}</label>))}</div>
      {works === 'no' && <input class="tall" type="text" aria-label={`${w.remark}, ${item.name}`} placeholder={w.remark} value={draft.remarks[item.id] ?? ''} data-testid={`remark-${item.id}`} onInput={e => onEdit({ remarks: { ...draft.remarks, [item.id]: e.currentTarget.value } })} />}
      {hint && <p class="hint">{hint}</p>}<Remark name={name} text={error} /></fieldset>
  );
  return (
    <div class={`field ${error ? 'wrong' : ''}`}><label class="label" for={'f-' + name}>{item.name}</label>
      <div class="result-line"><input class="big" type="text" inputMode="decimal" autocomplete="off" enterkeyhint="next" value={value} {...tie(name, error)} onInput={e => onEdit({ values: { ...draft.values, [item.id]: e.currentTarget.value } })} /><span class="unit">{unit(item)}</span></div>
      {says && <p class="beyond" role="status" data-testid={`quiet-${item.id}`}><WarnGlyph />{says}</p>}
      {hint && <p class="hint">{hint}</p>}<Remark name={name} text={error} /></div>
  );
}
