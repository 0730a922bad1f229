import { asTyped, typedUnit } from '../format/units';
import { Remark, tie } from '../parts/Field';
import { words } from '../words';
import { focusOn } from './focusOn';
import { slid, textOf, valueOf, written, type Edits, type InputKind, type Start } from './inputs';

/** One input: its name, the present figure, a number and a slider that move together. */
export function InputRow({ kind, edits, start, error, edit }: {
  kind: InputKind; edits: Edits; start: Start; error: string | undefined; edit: (text: string | undefined) => void;
}) {
  const name = words.measurand[kind.measurand], unit = typedUnit(kind.measurand);
  const value = valueOf(kind, edits, start), present = start[kind.key];
  const moved = edits[kind.key] !== undefined;
  const said = present === undefined ? words.whatIf.notTested : words.whatIf.present(`${written(kind, present)}${unit && '\u00a0' + unit}`);
  const typed = (si: number) => asTyped(kind.measurand, si);
  return (
    <div class={`set-row ${error ? 'wrong' : ''} ${moved ? 'moved' : ''}`}>
      <label class="label" for={'f-' + kind.key}>{name}</label>
      <span class="set-now">{moved && present !== undefined
        ? <button type="button" class="slim quiet-button" data-testid={'back-' + kind.key} onClick={() => { edit(undefined); focusOn(kind.key); }}>{words.whatIf.backTo(written(kind, present))}</button>
        : <span class="hint">{said}</span>}</span>
      <span class="set-number"><input type="text" inputMode="decimal" autocomplete="off" value={textOf(kind, edits, start)} {...tie(kind.key, error)} onInput={e => edit(e.currentTarget.value)} />
        <span class="unit">{unit}</span></span>
      <input class="set-slider" type="range" min={typed(kind.low)} max={typed(Math.max(kind.high, present ?? 0))} step={kind.step} value={typed(value ?? kind.low)} data-testid={'slider-' + kind.key}
        aria-label={words.whatIf.slider(name)} aria-valuetext={value === null || value === undefined ? words.whatIf.notTested : `${written(kind, value)} ${unit}`}
        onInput={e => edit(slid(kind, e.currentTarget.value))} />
      <Remark name={kind.key} text={error} />
    </div>
  );
}
