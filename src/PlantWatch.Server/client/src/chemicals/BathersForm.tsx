import { useState } from 'preact/hooks';
import { put } from '../api/http';
import type { Errors } from '../check/build';
import type { BathersRequest, BathersView } from '../contract.stock';
import { uuid7 } from '../format/uuid7';
import { allPools } from '../live/store';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { words } from '../words';

const w = words.chemicals;

/** How many bathed in a pool on a day. */
export function BathersForm({ yesterday, onDone, onLeave }: { yesterday: string; onDone: (text: string) => void; onLeave: () => void }) {
  const [id] = useState(uuid7);
  const pools = [...allPools.value.values()];
  const [pool, setPool] = useState(pools.length === 1 ? pools[0]!.id : ''), [day, setDay] = useState(yesterday), [number, setNumber] = useState('');
  const { busy, errors, run, setErrors } = useAction<BathersView>(v => onDone(w.bathersKept(v.number, v.pool)));
  const submit = () => {
    const wrong: Errors = {
      ...(pool ? {} : { poolId: words.check.needPool }), ...(/^\d{4}-\d\d-\d\d$/.test(day) ? {} : { day: w.needDay }), ...(/^\d{1,6}$/.test(number.trim()) ? {} : { number: w.needWhole }), ...(who.value.trim() ? {} : { by: words.needName }),
    };
    if (Object.keys(wrong).length) return setErrors(wrong);
    const request: BathersRequest = { poolId: pool, day, number: Number(number.trim()), by: who.value.trim() };
    void run(() => put(`/bathers/${id}`, request));
  };
  return (
    <form class="sheet card action come-to" noValidate onSubmit={e => { e.preventDefault(); submit(); }} data-testid="form-bathers">
      <h2>{w.bathersHead}</h2><p class="hint">{w.bathersHint}</p>
      <Field name="poolId" label={w.pool} error={errors['poolId']}><select value={pool} {...tie('poolId', errors['poolId'])} onChange={e => setPool(e.currentTarget.value)}><option value="" />{pools.map(p => <option key={p.id} value={p.id}>{p.name}</option>)}</select></Field>
      <Field name="day" label={w.day} error={errors['day']}><input type="date" class="tall" value={day} {...tie('day', errors['day'])} onInput={e => setDay(e.currentTarget.value)} /></Field>
      <Field name="number" label={w.number} error={errors['number']}><input type="text" inputmode="numeric" autocomplete="off" value={number} {...tie('number', errors['number'])} onInput={e => setNumber(e.currentTarget.value)} /></Field>
      <NameField name="bathers-by" label={w.saidBy} error={errors['by']} />
      <OtherRemarks errors={errors} shown={['poolId', 'day', 'number', 'by']} />
      <div class="inline"><button type="submit" class="primary" disabled={busy} data-testid="submit-bathers">{w.save}</button><button type="button" onClick={onLeave}>{w.cancel}</button></div>
    </form>
  );
}
