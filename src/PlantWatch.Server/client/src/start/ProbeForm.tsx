import { useEffect, useRef, useState } from 'preact/hooks';
import type { Measurand } from '../contract';
import type { Json, PlantFileView } from '../contract.plantFile';
import type { HeardTopicView, HeardValue } from '../contract.topics';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { words } from '../words';
import { idOf, probeKinds, sentIn, soFar, typed, usualRange, type SoFar } from './file';
import { missing, write } from './steps';

const w = words.start.probe;
const needsOrigin = (m: string) => !['sample_flow', 'circulation_flow', 'filter_pressure'].includes(m);

/** What a picked value is: kind, pool, whose number. */
export function ProbeForm({ file, topic, value, onDone, onCancel }: { file: SoFar; topic: HeardTopicView; value: HeardValue; onDone: (view: PlantFileView, name: string) => void; onCancel: () => void }) {
  const guess = value.guess === 'none' ? '' : value.guess;
  const begin = (m: string) => ({ name: m ? words.measurand[m as Measurand] : '', low: String(usualRange[m as Measurand]?.[0] ?? ''), high: String(usualRange[m as Measurand]?.[1] ?? ''), unit: m === 'orp' && value.value !== null && Math.abs(value.value) < 3 && !value.unit ? 'V' : '' });
  const [form, setForm] = useState({ measurand: guess as string, pool: '0', origin: '', electrode: '', every: String(topic.everySeconds && topic.everySeconds >= 1 ? Math.min(86400, Math.round(topic.everySeconds)) : 10), ...begin(guess) });
  const set = (change: Partial<typeof form>) => setForm(f => ({ ...f, ...change }));
  const top = useRef<HTMLSelectElement>(null);
  useEffect(() => top.current?.focus(), []);
  const { busy, errors, run, setErrors } = useAction<PlantFileView>(view => onDone(view, form.name.trim()));
  const send = (e: Event) => {
    e.preventDefault();
    const low = typed(form.low), high = typed(form.high), every = typed(form.every), name = form.name.trim(), m = form.measurand;
    const wrong = missing(
      ['measurand', !m, w.needMeasurand], ['probe-name', !name || name.length > 100, name ? words.start.site.long : w.needName], ['origin', needsOrigin(m) && !form.origin, w.needOrigin],
      ['electrode', m === 'orp' && form.electrode.trim().length < 2, w.needElectrode], ['range', low == null || high == null || low >= high, w.needRange], ['every', !every || every <= 0 || every > 86400, w.needEvery], ['by', !who.value.trim(), words.needName]);
    if (Object.keys(wrong).length) return setErrors(wrong);
    const [kind, at] = form.pool.split(':') as [string, string | undefined];
    const pool = kind === 'c' ? null : file.pools[Number(kind)]!;
    const circuit = pool ? pool.circuit : Number(at);
    void run(() => write(view => {
      const probe: Record<string, Json> = {
        id: idOf(pool ? `${pool.id}-${m}`.replaceAll('_', '-') : m.replaceAll('_', '-'), soFar(view.tree).ids, 'probe'), name, ...(pool ? { pool: pool.id } : {}), measurand: m, ...(needsOrigin(m) ? { origin: form.origin } : {}),
        topic: topic.topic, format: topic.format!, ...(value.record !== null ? { record: value.record } : {}), ...(form.unit && !value.unit ? { unit: form.unit } : {}), range: [low!, high!], every_seconds: every!,
        ...(m === 'orp' ? { reference_electrode: form.electrode.trim() } : {}),
      };
      return [{ do: 'add', path: `circuits[${circuit}].probes`, value: probe }];
    }, words.start.why.probe));
  };
  const own = ['measurand', 'probe-name', 'origin', 'electrode', 'range', 'every', 'by'];
  const units = value.unit ? undefined : sentIn[form.measurand as Measurand];
  return (
    <form class="stack probe-pick" onSubmit={send} noValidate>
      <Field name="measurand" label={w.measurand} error={errors['measurand']}>
        <select ref={top} class="tall" value={form.measurand} {...tie('measurand', errors['measurand'])} onChange={e => set({ measurand: e.currentTarget.value, ...begin(e.currentTarget.value) })}>
          <option value="">{words.start.pool.choose}</option>{probeKinds.map(k => <option key={k} value={k}>{words.measurand[k]}</option>)}</select></Field>
      <Field name="probe-name" label={w.name} error={errors['probe-name']}><input type="text" class="tall" value={form.name} {...tie('probe-name', errors['probe-name'])} onInput={e => set({ name: e.currentTarget.value })} /></Field>
      <Field name="of-pool" label={w.pool}>
        <select class="tall" value={form.pool} {...tie('of-pool')} onChange={e => set({ pool: e.currentTarget.value })}>
          {file.pools.map((p, i) => <option key={p.id} value={String(i)}>{p.name}</option>)}{file.circuits.map((c, i) => <option key={i} value={`c:${i}`}>{w.mixed} {String(c['name'] ?? '')}</option>)}</select></Field>
      {needsOrigin(form.measurand) && <Field name="origin" label={w.origin} error={errors['origin']} group>
        <div class="choices">
          {([['raw', w.raw, w.rawMeans], ['panel_scaled', w.panel, w.panelMeans]] as const).map(([k, label, means]) => <label key={k} class="choice"><input type="radio" name="origin" value={k} checked={form.origin === k} data-testid={`origin-${k}`} onChange={() => set({ origin: k })} /><span>{label}<span class="hint block">{means}</span></span></label>)}
        </div></Field>}
      {form.measurand === 'orp' && <Field name="electrode" label={w.electrode} error={errors['electrode']} hint={w.electrodeHint}>
        <input type="text" class="tall" list="electrodes" value={form.electrode} {...tie('electrode', errors['electrode'])} onInput={e => set({ electrode: e.currentTarget.value })} />
        <datalist id="electrodes">{['Ag/AgCl 3 M', 'Ag/AgCl 3.5 M', 'Ag/AgCl saturated', 'Calomel saturated'].map(x => <option key={x} value={x} />)}</datalist></Field>}
      {units && <Field name="unit" label={w.unit}><select class="tall" value={form.unit} {...tie('unit')} onChange={e => set({ unit: e.currentTarget.value })}>{units.map(([k, text]) => <option key={k} value={k}>{text}</option>)}</select></Field>}
      <div class="two">
        <Field name="range" label={w.low} error={errors['range']} hint={w.rangeHint}><input type="text" inputmode="decimal" class="short" value={form.low} {...tie('range', errors['range'])} onInput={e => set({ low: e.currentTarget.value })} /></Field>
        <Field name="high" label={w.high}><input type="text" inputmode="decimal" class="short" value={form.high} {...tie('high')} onInput={e => set({ high: e.currentTarget.value })} /></Field>
        <Field name="every" label={w.every_} error={errors['every']}><span class="inline"><input type="text" inputmode="decimal" class="short" value={form.every} {...tie('every', errors['every'])} onInput={e => set({ every: e.currentTarget.value })} /><span class="unit">{w.seconds}</span></span></Field>
      </div>
      {!who.value.trim() || errors['by'] ? <NameField name="by" error={errors['by']} /> : null}
      <OtherRemarks errors={errors} shown={own} />
      <div class="inline"><button class="primary" type="submit" disabled={busy} data-testid="save-probe">{busy ? words.start.saving : w.save}</button><button type="button" onClick={onCancel}>{w.cancel}</button></div>
    </form>
  );
}
