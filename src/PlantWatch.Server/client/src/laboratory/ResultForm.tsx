import { useState } from 'preact/hooks';
import { put } from '../api/http';
import type { Errors } from '../check/build';
import type { CountSense, LabPoolView, LabResultView, Organism } from '../contract.laboratory';
import { uuid7 } from '../format/uuid7';
import { fromField, toField } from '../format/zone';
import { zone } from '../live/store';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { words } from '../words';

const w = words.laboratory;
const organisms: { key: Organism; name: string; ml: string }[] = [
  { key: 'colony_count', name: w.colonyCount, ml: '1' }, { key: 'escherichia_coli', name: 'Escherichia coli', ml: '100' },
  { key: 'pseudomonas_aeruginosa', name: 'Pseudomonas aeruginosa', ml: '100' }, { key: 'legionella', name: w.legionella, ml: '100' },
];
interface Row { sense: CountSense; count: string; ml: string }
const blank = (): Record<Organism, Row> => Object.fromEntries(organisms.map(o => [o.key, { sense: 'counted', count: '', ml: o.ml }])) as Record<Organism, Row>;
const number = (text: string) => { const t = text.trim().replace(',', '.'); return t !== '' && Number.isFinite(Number(t)) ? Number(t) : null; };

/** A report as it is printed: nothing is converted by hand. */
export function ResultForm({ pools, wanted, onDone }: { pools: LabPoolView[]; wanted: string | null; onDone: () => void }) {
  const [id, renew] = useState(uuid7);
  const [pool, setPool] = useState(wanted ?? (pools.length === 1 ? pools[0]!.poolId : ''));
  const [point, setPoint] = useState('pool');
  const [text, setText] = useState({ place: '', laboratory: '', sampleNumber: '', note: '' });
  const [sampled, setSampled] = useState('');
  const [reported, setReported] = useState(() => toField(Date.now(), zone.value));
  const [rows, setRows] = useState(blank);
  const { busy, errors, run, setErrors } = useAction<LabResultView>(() => { renew(uuid7()); setRows(blank()); setSampled(''); setText(t => ({ ...t, sampleNumber: '', note: '' })); onDone(); });
  const filled = organisms.filter(o => rows[o.key].sense === 'not_detected' || rows[o.key].count.trim() !== '');
  const submit = () => {
    const wrong: Errors = {};
    const [at, told] = [fromField(sampled, zone.value), fromField(reported, zone.value)];
    if (!pool) wrong['poolId'] = w.needPool;
    if (at === null) wrong['sampledAt'] = w.needTime;
    if (told === null) wrong['reportedAt'] = w.needTime;
    for (const key of ['laboratory', 'sampleNumber'] as const) if (!text[key].trim()) wrong[key] = w.need;
    if (!who.value.trim()) wrong['by'] = words.needName;
    if (filled.length === 0) wrong['counts'] = w.needOne;
    for (const o of filled) if ((rows[o.key].sense !== 'not_detected' && number(rows[o.key].count) === null) || number(rows[o.key].ml) === null) wrong['counts'] = w.needNumber;
    if (Object.keys(wrong).length) return setErrors(wrong);
    void run(() => put(`/laboratory/${id}`, {
      poolId: pool, point, place: text.place, sampledAt: new Date(at!).toISOString(), reportedAt: new Date(told!).toISOString(), laboratory: text.laboratory, sampleNumber: text.sampleNumber,
      by: who.value.trim(), note: text.note, counts: filled.map(o => ({ organism: o.key, sense: rows[o.key].sense, count: rows[o.key].sense === 'not_detected' ? 0 : number(rows[o.key].count), millilitres: number(rows[o.key].ml) })),
    }));
  };
  const change = (key: Organism, part: Partial<Row>) => setRows(r => ({ ...r, [key]: { ...r[key], ...part } }));
  const line = (key: 'place' | 'laboratory' | 'sampleNumber', label: string) => (
    <Field name={key} label={label} error={errors[key]}><input type="text" value={text[key]} {...tie(key, errors[key])} onInput={e => { const v = e.currentTarget.value; setText(t => ({ ...t, [key]: v })); }} /></Field>);
  return (
    <details class="sheet form-part" data-testid="lab-form"><summary><h2>{w.enter}</h2></summary>
      <form class="action" noValidate onSubmit={e => { e.preventDefault(); submit(); }}>
        <Field name="poolId" label={w.pool} error={errors['poolId']}><select value={pool} {...tie('poolId', errors['poolId'])} onChange={e => setPool(e.currentTarget.value)}>
          <option value="" />{pools.map(p => <option key={p.poolId} value={p.poolId}>{p.name}</option>)}</select></Field>
        <Field name="point" label={w.point}><select value={point} {...tie('point')} onChange={e => setPoint(e.currentTarget.value)}>{['pool', 'outlet', 'balance_tank', 'cell'].map(p => <option key={p} value={p}>{w.points[p]}</option>)}</select></Field>
        {line('place', w.place)}
        <Field name="sampledAt" label={w.sampled} error={errors['sampledAt']}><input type="datetime-local" class="tall" value={sampled} {...tie('sampledAt', errors['sampledAt'])} onInput={e => setSampled(e.currentTarget.value)} /></Field>
        <Field name="reportedAt" label={w.reported} error={errors['reportedAt']}><input type="datetime-local" class="tall" value={reported} {...tie('reportedAt', errors['reportedAt'])} onInput={e => setReported(e.currentTarget.value)} /></Field>
        {line('laboratory', w.lab)}{line('sampleNumber', w.sampleNumber)}
        <Field name="counts" label={w.counts} error={errors['counts']} group>{organisms.map(o => (
          <div class="lab-line" key={o.key} role="group" aria-label={o.name}><i>{o.name}</i>
            <select aria-label={`${o.name}: ${w.count}`} value={rows[o.key].sense} data-testid={`sense-${o.key}`} onChange={e => change(o.key, { sense: e.currentTarget.value as CountSense })}>{(['counted', 'below', 'above', 'not_detected'] as const).map(s => <option key={s} value={s}>{w.senses[s]}</option>)}</select>
            <input type="text" inputMode="decimal" aria-label={`${o.name}: ${w.count}`} data-testid={`count-of-${o.key}`} disabled={rows[o.key].sense === 'not_detected'} value={rows[o.key].sense === 'not_detected' ? '' : rows[o.key].count} onInput={e => change(o.key, { count: e.currentTarget.value })} />
            <span class="unit">{w.volume}</span>
            <select aria-label={`${o.name}: mL`} value={rows[o.key].ml} onChange={e => change(o.key, { ml: e.currentTarget.value })}>{['1', '10', '100', '250', '1000'].map(m => <option key={m} value={m}>{m} mL</option>)}</select>
          </div>))}</Field>
        <Field name="note" label={w.note}><textarea rows={2} value={text.note} {...tie('note')} onInput={e => { const v = e.currentTarget.value; setText(t => ({ ...t, note: v })); }} /></Field>
        <NameField name="by" error={errors['by']} />
        <OtherRemarks errors={errors} shown={['poolId', 'sampledAt', 'reportedAt', 'laboratory', 'sampleNumber', 'place', 'counts', 'by']} />
        <div class="inline"><button type="submit" class="primary" disabled={busy} data-testid="save-result">{w.save}</button></div>
      </form>
    </details>
  );
}
