import type { ProbeInfo } from '../contract';
import { fixed, readTyped, unitText } from '../format/number';
import { asSi, typedUnit } from '../format/units';
import { probesOfPool, reading } from '../live/store';
import { Field, tie } from '../parts/Field';
import { words } from '../words';
import type { Errors } from './build';
import { resultOf } from './build';
import { draft, edit } from './draft';

// What two displays of one number may differ by, as the server takes it: rounding on both, and the moment it takes to read them.
const rounding: Partial<Record<ProbeInfo['measurand'], number>> = { ph: 0.03, orp: 6, temperature: 0.3, free_chlorine: 0.05 };

/** What is received of the probe and what the test says, once the panel was read: shown earlier it would only be copied. */
function Beside({ probe }: { probe: ProbeInfo }) {
  const d = draft.value;
  const typed = readTyped(d.panel[probe.id] ?? '');
  const point = reading(probe.id).value;
  if (typed.kind !== 'number' || !point) return null;
  const differs = probe.origin === 'panel_scaled' && Math.abs(asSi(probe.measurand, typed.value) - point.r) > (rounding[probe.measurand] ?? Infinity);
  const test = resultOf(d, probe.measurand);
  return (
    <span data-testid={`beside-${probe.id}`}>
      {words.check.receivedNow(fixed(point.r, probe.decimals))}{test !== null && probe.measurand !== 'orp' && `, ${words.check.testedNow(fixed(test, probe.decimals))}`}
      {differs && <b class="block">{'\u25b2'} {words.check.panelDiffers}</b>}
    </span>
  );
}

function Line({ probe, errors }: { probe: ProbeInfo; errors: Errors }) {
  const d = draft.value;
  const name = 'panel-' + probe.id;
  return (
    <Field name={name} label={probe.name} error={errors[name]} hint={<Beside probe={probe} />}>
      <div class="inline">
        <input class="big" type="text" inputMode="decimal" autocomplete="off" value={d.panel[probe.id] ?? ''} {...tie(name, errors[name])}
          onInput={e => edit({ panel: { ...d.panel, [probe.id]: e.currentTarget.value } })} />
        <span class="unit">{probe.measurand === 'temperature' ? typedUnit(probe.measurand) : unitText(probe.unit)}</span>
      </div>
    </Field>
  );
}

/** What the panel shows: asked for of each probe that the pumps are dosed by; of the others it may be written down. */
export function PanelPart({ errors }: { errors: Errors }) {
  const d = draft.value;
  const probes = probesOfPool(d.poolId).filter(p => p.measurand !== 'sample_flow');
  const scaled = probes.filter(p => p.origin === 'panel_scaled');
  const raw = probes.filter(p => p.origin === 'raw');
  if (probes.length === 0) return null;
  const open = scaled.length === 0 || raw.some(p => d.panel[p.id] || errors['panel-' + p.id]);
  return (
    <section class="sheet form-part" data-testid="panel-part">
      <h2>{words.check.panel}</h2>
      <p class="hint">{scaled.length > 0 ? words.check.panelAsked : words.check.panelHint}</p>
      {scaled.length > 0 && <div class="two">{scaled.map(p => <Line key={p.id} probe={p} errors={errors} />)}</div>}
      {raw.length > 0 && (
        <details open={open}><summary data-testid="panel-others">{words.check.panelOthers}</summary>
          <div class="two">{raw.map(p => <Line key={p.id} probe={p} errors={errors} />)}</div></details>)}
    </section>
  );
}
