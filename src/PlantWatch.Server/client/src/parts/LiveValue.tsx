import type { LimitBand, ProbeInfo, Standing } from '../contract';
import { fixed, unitText } from '../format/number';
import { beside } from '../format/units';
import { probeViews, reading } from '../live/store';
import { words } from '../words';
import { Age } from './Age';
import { besideLimit, beyond } from './beyond';
import { ofProbe } from '../know/probe';
import { headingOf } from '../live/store';
import { WarnGlyph } from './Glyph';
import { Know } from './Know';

/** The number is shown as read, but not as if it could be relied on. */
const isDoubted = (s: Standing) => s === 'maintenance_required' || s === 'out_of_specification' || s === 'failure';

/** The newest value of a probe, big, with unit, age and what is wrong with it. */
export function LiveValue({ probe, limit, testId = true }: { probe: ProbeInfo; limit?: LimitBand | undefined; testId?: boolean }) {
  const point = reading(probe.id).value;
  const view = probeViews.value.get(probe.id);
  const stale = view?.stale ?? false;
  const out = point?.g ? beyond(point.v, limit, probe.decimals) : null;
  const text = !point ? '\u2013' : probe.measurand === 'sample_flow' ? (point.v >= 0.5 ? words.flow : words.noFlow) : out ? besideLimit(point.v, limit, probe.decimals) : fixed(point.v, probe.decimals);
  const doubted = point && view && !stale && point.g && isDoubted(view.standing);
  const kind = !point ? 'none' : stale ? 'stale' : !point.g ? 'bad' : doubted ? 'doubted' : '';
  // Chlorine is said by probes and by tests: beside the figure stands which.
  const corrected = view?.calibration?.kind === 'offset' || view?.calibration?.kind === 'two_point';
  const basis = point && (probe.measurand.endsWith('_chlorine') || probe.measurand === 'bromine') ? words.know.basis[corrected ? 'corrected' : 'probe'] : '';
  return (
    <div class={`live-value ${kind} ${out ? 'out' : ''}`}>
      <span class="figure"><span data-testid={testId ? `value-${probe.id}` : undefined}>{text}</span> <span class="unit">{unitText(probe.unit)}</span></span>
      <span class="under">
        {point && beside(probe.measurand, point.v) && <span>{beside(probe.measurand, point.v)} </span>}
        {out && <span class="beyond"><WarnGlyph />{out}</span>}
        {doubted && view.believed && <b class="believed">{words.overview.believed(fixed(view.believed.value, probe.decimals), fixed(view.believed.u, probe.decimals))}</b>}
        {basis && <span>{basis}</span>}
        {point ? <>{stale && <b>{words.overview.silent} </b>}<Age at={point.t} bare={stale} /></> : words.overview.noReading}
        <Know of={headingOf(probe, [])} tell={() => ofProbe(probe)} testId={testId ? probe.id : undefined} />
      </span>
    </div>
  );
}
