import type { RoundItemView } from '../contract.plantRound';
import { ageAt, span } from '../format/age';
import { fixed } from '../format/number';
import { now } from '../live/clock';
import { Remark, tie } from '../parts/Field';
import { WarnGlyph } from '../parts/Glyph';
import { words } from '../words';
import { unitOfItem as unit, wrongOf } from './build';
import { doubtOf } from './doubt';
import type { Draft } from './store';

const w = words.plantRound;

const figure = (v: number) => fixed(v, v % 1 === 0 ? 0 : Math.abs(v) < 10 ? 2 : 1);

function limits(item: RoundItemView): string {
  if (item.low === null && item.high === null) return '';
  return w.limits(item.low !== null && item.high !== null ? `${figure(item.low)}\u2009\u2013\u2009${figure(item.high)} ${unit(item)}` : item.low !== null ? `\u2265 ${figure(item.low)} ${unit(item)}` : `\u2264 ${figure(item.high!)} ${unit(item)}`);
}

/** Said while it is typed, quietly: beyond what is in order, or a meter that went backwards or ran away. */
function quiet(item: RoundItemView, text: string, holds: number | null): string | null {
  const doubt = doubtOf(item, text, now.value, holds);
  switch (doubt?.kind) {
    case 'low': return words.below(figure(doubt.at));
    case 'high': return words.above(figure(doubt.at));
    case 'back': return w.meterBack;
    case 'far': return w.meterFar(figure(Math.round(doubt.more * 10) / 10), figure(holds!));
    default: return null;
  }
}

/** One thing that is looked at: a number, or in order or not. */
export function Item({ item, holds, draft, error: said, onEdit }: { item: RoundItemView; holds: number | null; draft: Draft; error: string | undefined; onEdit: (change: Partial<Draft>) => void }) {
  const value = draft.values[item.id] ?? '', works = draft.works[item.id] ?? '', says = quiet(item, value, holds), error = said ?? wrongOf(item, value);
  const age = ageAt(now.value, item.lastAt);
  const last = age === null ? null : w.last(item.lastWorks === null ? `${figure(item.lastValue ?? 0)} ${unit(item)}` : item.lastWorks ? w.inOrder : w.notInOrder, span(age));
  const hint = [limits(item), last, item.wanted ? null : w.notToday].filter(Boolean).join('; ');
  const name = 'item-' + item.id;
  if (item.kind === 'works') return (
    <fieldset class={`field ${error ? 'wrong' : ''}`} data-testid={name}><legend class="label">{item.name}</legend>
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
