import { useState } from 'preact/hooks';
import type { Json, PlantFileView } from '../contract.plantFile';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { words } from '../words';
import { idOf, soFar, typed, type SoFar } from './file';
import { missing, write } from './steps';

const w = words.start.pool;

function Choice({ name, label, options, value, set, error, hint }: { name: string; label: string; options: Record<string, string>; value: string; set: (v: string) => void; error?: string | undefined; hint?: string }) {
  return (
    <Field name={name} label={label} error={error} hint={hint}>
      <select class="tall" value={value} {...tie(name, error)} onChange={e => set(e.currentTarget.value)}>
        <option value="">{w.choose}</option>{Object.entries(options).map(([k, text]) => <option key={k} value={k}>{text}</option>)}
      </select>
    </Field>
  );
}

export function PoolStep({ file, onDone }: { file: SoFar; onDone: (view: PlantFileView) => void }) {
  const [form, setForm] = useState({ name: '', kind: '', setting: '', disinfectant: '', volume: '', turnover: '', circuit: 'own' });
  const set = (change: Partial<typeof form>) => setForm(f => ({ ...f, ...change }));
  const { busy, errors, run, setErrors } = useAction<PlantFileView>(onDone);
  const send = (e: Event) => {
    e.preventDefault();
    const volume = typed(form.volume), turnover = typed(form.turnover), name = form.name.trim();
    const wrong = missing(
      ['pool-name', !name || name.length > 100, name ? words.start.site.long : w.needName], ['kind', !form.kind, w.needKind], ['setting', !form.setting, w.needSetting], ['disinfectant', !form.disinfectant, w.needDisinfectant],
      ['volume', !volume || volume <= 0, w.needVolume], ['turnover', turnover === undefined || (turnover !== null && turnover <= 0), w.needTurnover], ['by', !who.value.trim(), words.needName]);
    if (Object.keys(wrong).length) return setErrors(wrong);
    void run(() => write(view => {
      const now = soFar(view.tree), id = idOf(name, now.ids, 'pool');
      const pool = { id, name, kind: form.kind, setting: form.setting, disinfectant: form.disinfectant, volume_m3: volume! };
      if (form.circuit !== 'own') return [{ do: 'add', path: `circuits[${form.circuit}].pools`, value: pool }];
      const circuit: Json = { id: idOf(`${id}-water`, new Set([...now.ids, id]), 'water'), name: w.circuitName(name).slice(0, 100), ...(turnover ? { turnover_hours: turnover } : {}), pools: [pool] };
      return [{ do: 'add', path: 'circuits', value: circuit }];
    }, words.start.why.pool));
  };
  const own = ['pool-name', 'kind', 'setting', 'disinfectant', 'volume', 'turnover', 'by'];
  return (
    <form class="stack" onSubmit={send} noValidate>
      <Field name="pool-name" label={w.name} error={errors['pool-name']}><input type="text" class="tall" value={form.name} {...tie('pool-name', errors['pool-name'])} onInput={e => set({ name: e.currentTarget.value })} /></Field>
      {file.circuits.length > 0 && <Field name="circuit" label={w.circuit}>
        <select class="tall" value={form.circuit} {...tie('circuit')} onChange={e => set({ circuit: e.currentTarget.value })}>
          <option value="own">{w.own}</option>{file.circuits.map((c, i) => <option key={i} value={String(i)}>{w.shares(String(c['name'] ?? ''))}</option>)}</select></Field>}
      <Choice name="kind" label={w.kind} options={w.kinds} value={form.kind} set={kind => set({ kind })} error={errors['kind']} />
      <Choice name="setting" label={w.setting} options={w.settings} value={form.setting} set={setting => set({ setting })} error={errors['setting']} />
      <Choice name="disinfectant" label={w.disinfectant} options={w.disinfectants} value={form.disinfectant} set={disinfectant => set({ disinfectant })} error={errors['disinfectant']} hint={w.stabilised} />
      <Field name="volume" label={w.volume} error={errors['volume']} hint={w.volumeHint}>
        <span class="inline"><input type="text" inputmode="decimal" class="short" value={form.volume} {...tie('volume', errors['volume'])} onInput={e => set({ volume: e.currentTarget.value })} /><span class="unit">{'m\u00b3'}</span></span></Field>
      {form.circuit === 'own' && <Field name="turnover" label={`${w.turnover} (${words.start.optional})`} error={errors['turnover']} hint={w.turnoverHint}>
        <span class="inline"><input type="text" inputmode="decimal" class="short" value={form.turnover} {...tie('turnover', errors['turnover'])} onInput={e => set({ turnover: e.currentTarget.value })} /><span class="unit">h</span></span></Field>}
      <p class="hint">{w.notKnown}</p>
      {!who.value.trim() || errors['by'] ? <NameField name="by" error={errors['by']} /> : null}
      <OtherRemarks errors={errors} shown={own} />
      <button class="primary" type="submit" disabled={busy} data-testid="save-pool">{busy ? words.start.saving : words.start.save}</button>
    </form>
  );
}
