import { useEffect, useRef, useState } from 'preact/hooks';
import { post } from '../api/http';
import type { FilterView, WashRequest } from '../contract.filter';
import { uuid7 } from '../format/uuid7';
import { fixed, readTyped } from '../format/number';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { words } from '../words';

/** What can be said of a filter. */
export type WashAct = 'backwash' | 'washed' | 'backwash/end';

const w = words.filters;
const names: Record<WashAct, string> = { backwash: w.begin, washed: w.note, 'backwash/end': w.giveUp };
const said: Record<WashAct, (name: string) => string> = { backwash: w.begun, washed: w.noted, 'backwash/end': w.ended };

/** A person says by name that a filter is backwashed, was washed, or that its backwash is over. */
export function WashForm({ filter, circuit, act, onDone, onLeave }: { filter: FilterView; circuit: string; act: WashAct; onDone: (words: string) => void; onLeave: () => void }) {
  // The id is made once: sent again after a lost answer it is the same wash.
  const [id] = useState(() => (act === 'backwash/end' ? filter.backwash?.id : undefined) ?? uuid7());
  const { busy, errors, run, setErrors } = useAction<unknown>(() => onDone((filter.kind === 'strainer' ? w.emptyNoted : said[act])(filter.name)));
  const strainer = filter.kind === 'strainer';
  const asksWater = act === 'washed' && !strainer;
  const waterField = `wash-water-${circuit}-${filter.id}`;
  const [water, setWater] = useState('');
  const [why, setWhy] = useState('');
  const send = useRef<HTMLButtonElement>(null);
  useEffect(() => send.current?.focus(), []);
  const whyName = `wash-why-${circuit}-${filter.id}`;
  const asksWhy = act === 'backwash' && (filter.againNeedsWhy || errors['why'] !== undefined);
  const submit = () => {
    const typed = readTyped(water);
    const missing = {
      ...(!who.value.trim() && { by: words.needName }), ...(asksWhy && !why.trim() && { why: w.needWhy }), ...(asksWater && water.trim() && typed.kind !== 'number' && { cubicMetres: w.needWater }),
    };
    if (Object.keys(missing).length > 0) return setErrors(missing);
    const body: WashRequest = { id, by: who.value.trim(), circuit, ...(asksWater && typed.kind === 'number' ? { cubicMetres: typed.value } : {}), ...(asksWhy ? { why: why.trim() } : {}) };
    void run(() => post(`/filters/${encodeURIComponent(filter.id)}/${act}`, body));
  };
  return (
    <form class="action wash-form" noValidate onSubmit={e => { e.preventDefault(); submit(); }} data-testid={`wash-form-${circuit}-${filter.id}`}>
      {act === 'backwash' && <p class="hint">{w.hint}</p>}
      {strainer && <p class="hint">{w.emptyHint}</p>}
      {asksWater && <Field name={waterField} label={w.water} error={errors['cubicMetres']} hint={filter.usualWashM3 === null ? w.noUsual : w.usual(`${fixed(filter.usualWashM3, 1)}\u00a0m\u00b3`)}>
        <input class="short" type="text" inputMode="decimal" autocomplete="off" value={water} {...tie(waterField, errors['cubicMetres'])} onInput={e => setWater(e.currentTarget.value)} /></Field>}
      <NameField name={`wash-by-${circuit}-${filter.id}`} error={errors['by']} />
      {asksWhy && <Field name={whyName} label={w.why} hint={w.whyHint} error={errors['why']}><input type="text" {...tie(whyName, errors['why'])} value={why} onInput={e => setWhy(e.currentTarget.value)} /></Field>}
      <OtherRemarks errors={errors} shown={['by', 'why', ...(asksWater ? ['cubicMetres'] : [])]} />
      <div class="inline"><button ref={send} type="submit" class="primary" disabled={busy} data-testid="submit-wash">{strainer ? w.noteEmptied : names[act]}</button><button type="button" onClick={onLeave}>{w.cancel}</button></div>
    </form>
  );
}
