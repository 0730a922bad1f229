import { useState } from 'preact/hooks';
import { post } from '../api/http';
import type { LimitQuantity, WhatIfLimitsChoices, WhatIfLimitsRun } from '../contract.whatIfLimits';
import { plain, unitText } from '../format/number';
import { dayClock } from '../format/zone';
import { zone } from '../live/store';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { useAction } from '../parts/useAction';
import { words } from '../words';
import { changeOf, draftOf, fieldsOf, slips, type Draft, type Figure } from './asked';

const w = words.whatIfLimits;
const dayLong = 86_400_000;
const shown = ['pool', 'measurand', 'low', 'high', 'deadband', 'onDelaySeconds', 'offDelaySeconds', 'source', 'loosenedBy', 'loosenedWhy', 'from'];

function inForce(q: LimitQuantity): string {
  const unit = unitText(q.unit), of = (v: number) => `${plain(v)}${unit ? '\u00a0' + unit : ''}`;
  if (q.low === null && q.high === null) return w.noLimit;
  const ends = q.low !== null && q.high !== null ? w.between(plain(q.low), of(q.high)) : q.low !== null ? w.from(of(q.low)) : w.upTo(of(q.high!));
  const origin = [...new Set([q.low === null ? null : q.lowFrom, q.high === null ? null : q.highFrom].filter(x => x !== null))].map(x => x === '' ? w.own : w.row(x));
  return `${ends} (${origin.join(', ')})`;
}

/** One limit as it might be: what holds now stands beside it. */
export function LimitForm({ choices, onRun }: { choices: WhatIfLimitsChoices; onRun: (run: WhatIfLimitsRun) => void }) {
  const pools = choices.pools.filter(p => p.quantities.length > 0);
  const [poolId, setPool] = useState(pools[0]?.id ?? '');
  const pool = pools.find(p => p.id === poolId) ?? pools[0];
  const [key, setKey] = useState('');
  const quantity = pool?.quantities.find(q => q.measurand === key) ?? pool?.quantities[0];
  // What was typed belongs to this quantity of this pool.
  const here = `${pool?.id}/${quantity?.measurand}`;
  const [held, hold] = useState<{ of: string; draft: Draft } | null>(null);
  const [days, setDays] = useState('28');
  const { busy, errors, run, setErrors } = useAction<WhatIfLimitsRun>(onRun);
  if (!pool || !quantity) return <p class="hint">{w.nothing}</p>;
  const draft = held?.of === here ? held.draft : draftOf(quantity);
  const change = (part: Partial<Draft>) => hold({ of: here, draft: { ...draft, ...part } });
  const said = fieldsOf(errors);
  const unit = unitText(quantity.unit);

  const submit = () => {
    const wrong = slips(draft, days, choices.longestDays);
    if (Object.keys(wrong).length > 0) return setErrors(wrong);
    const from = new Date(Date.now() - Number(days.replace(',', '.')) * dayLong).toISOString();
    void run(() => post('/what-if/limits', { from, changes: [changeOf(pool.id, quantity, draft)] }));
  };
  const number = (name: Figure, label: string, of: string, hint?: string) => (
    <Field name={name} label={label} error={said[name]} hint={hint}>
      <span class="set-number wide"><input type="text" inputMode="decimal" autocomplete="off" value={draft[name]} {...tie(name, said[name])} onInput={e => change({ [name]: e.currentTarget.value })} />{of && <span class="unit">{of}</span>}</span>
    </Field>);
  const line = (name: 'source' | 'loosenedWhy', label: string, hint?: string) => (
    <Field name={name} label={label} error={said[name]} hint={hint}><input type="text" value={draft[name]} {...tie(name, said[name])} onInput={e => change({ [name]: e.currentTarget.value })} /></Field>);
  const tuned = !!(draft.deadband || draft.onDelaySeconds || draft.offDelaySeconds || said['deadband'] || said['onDelaySeconds'] || said['offDelaySeconds']);
  const loose = Object.keys(errors).length > 0 || !!draft.loosenedBy;
  return (
    <form class="sheet card limit-ask" noValidate onSubmit={e => { e.preventDefault(); submit(); }}>
      <h2>{w.ask}</h2>
      <div class="ask-pair">
        <Field name="pool" label={w.pool} error={said['pool']}><select value={pool.id} {...tie('pool', said['pool'])} onChange={e => { setPool(e.currentTarget.value); setErrors({}); }}>{pools.map(p => <option key={p.id} value={p.id}>{p.name}</option>)}</select></Field>
        <Field name="measurand" label={w.quantity} error={said['measurand']}><select value={quantity.measurand} {...tie('measurand', said['measurand'])} onChange={e => { setKey(e.currentTarget.value); setErrors({}); }}>{pool.quantities.map(q => <option key={q.measurand} value={q.measurand}>{q.name}</option>)}</select></Field>
      </div>
      <p data-testid="in-force"><b>{w.inForce}:</b> {inForce(quantity)}{quantity.stop && <span class="hint block">{w.stop(plain(quantity.stop[0]), `${plain(quantity.stop[1])}${unit ? ' ' + unit : ''}`)}</span>}{!quantity.watched && <span class="hint block">{w.byHand}</span>}</p>
      <div class="ask-pair">{number('low', w.low, unit, w.leaveEmpty)}{number('high', w.high, unit)}</div>
      {quantity.watched && <details open={tuned || undefined}><summary>{w.more}</summary><div class="ask-pair">
        {number('deadband', w.deadband, unit, w.usual(`${quantity.deadband === null ? '' : plain(quantity.deadband)} ${unit}`.trim()))}{number('onDelaySeconds', w.onDelay, 's', w.usual(`${quantity.onDelaySeconds} s`))}{number('offDelaySeconds', w.offDelay, 's', w.usual(`${quantity.offDelaySeconds} s`))}</div></details>}
      <details open={loose || undefined}><summary>{w.looser}</summary><p class="hint">{w.looserMeans}</p>
        {choices.mayLoosen.length === 0 ? <p class="hint">{w.nobody}</p> : <div class="ask-pair">
          <Field name="loosenedBy" label={w.looserBy} error={said['loosenedBy']}><select value={draft.loosenedBy} {...tie('loosenedBy', said['loosenedBy'])} onChange={e => change({ loosenedBy: e.currentTarget.value })}><option value="" />{choices.mayLoosen.map(n => <option key={n} value={n}>{n}</option>)}</select></Field>
          {line('loosenedWhy', w.looserWhy)}</div>}</details>
      {line('source', w.source, w.sourceHint)}
      <Field name="from" label={w.days} error={said['from']} hint={choices.recordBegins ? w.recordBegins(dayClock(choices.recordBegins, zone.value)) : undefined}>
        <input type="text" inputMode="numeric" class="short" value={days} {...tie('from', said['from'])} onInput={e => setDays(e.currentTarget.value)} /></Field>
      <OtherRemarks errors={said} shown={shown} />
      <div class="inline"><button type="submit" class="primary" disabled={busy} data-testid="replay">{w.run}</button></div>
    </form>
  );
}
