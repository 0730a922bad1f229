import { useEffect, useRef, useState } from 'preact/hooks';
import { post } from '../api/http';
import type { FilterView, WashRequest } from '../contract.filter';
import { uuid7 } from '../format/uuid7';
import { OtherRemarks } from '../parts/Field';
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
  const { busy, errors, run, setErrors } = useAction<unknown>(() => onDone(said[act](filter.name)));
  const send = useRef<HTMLButtonElement>(null);
  useEffect(() => send.current?.focus(), []);
  const submit = () => {
    if (!who.value.trim()) return setErrors({ by: words.needName });
    const body: WashRequest = { id, by: who.value.trim(), circuit };
    void run(() => post(`/filters/${encodeURIComponent(filter.id)}/${act}`, body));
  };
  return (
    <form class="action wash-form" noValidate onSubmit={e => { e.preventDefault(); submit(); }} data-testid={`wash-form-${circuit}-${filter.id}`}>
      {act === 'backwash' && <p class="hint">{w.hint}</p>}
      <NameField name={`wash-by-${circuit}-${filter.id}`} error={errors['by']} />
      <OtherRemarks errors={errors} shown={['by']} />
      <div class="inline"><button ref={send} type="submit" class="primary" disabled={busy} data-testid="submit-wash">{names[act]}</button><button type="button" onClick={onLeave}>{w.cancel}</button></div>
    </form>
  );
}
