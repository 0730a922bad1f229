import type { ProbeInfo } from '../contract';
import type { BenchView } from '../contract.bench';
import { fixed, signed, unitText } from '../format/number';
import { dayClock } from '../format/zone';
import { isOfPlantRoom, probeViews, zone } from '../live/store';
import { usePolled } from '../parts/usePolled';
import { link } from '../router';
import { words } from '../words';

const w = words.calibrate;

/** The way to the bench, when it is due, and what the bench has shown so far. */
export function CalibrateLink({ probe }: { probe: ProbeInfo }) {
  const view = probeViews.value.get(probe.id);
  const { data } = usePolled<BenchView>('/bench/' + encodeURIComponent(probe.id), 300_000);
  if (probe.measurand === 'sample_flow' || isOfPlantRoom(probe.measurand)) return null;
  const d = probe.measurand === 'ph' ? 3 : 1;
  return (
    <div class="inline" data-testid="calibrate-link">
      <a class="button" href={link('calibrate', probe.id)}>{w.open}</a>
      {view?.calibrationDueAt && <span class={view.calibrationOverdue ? 'notice' : 'hint'} data-testid="calibration-due">{(view.calibrationOverdue ? w.overdue : w.due)(dayClock(view.calibrationDueAt, zone.value))}</span>}
      {data?.driftPerDay && <span class="hint" data-testid="bench-drift">{w.drift.title}: {w.drift.perMonth(`${signed(30 * data.driftPerDay.value, d)} ${unitText(probe.unit)}`.trim(), fixed(30 * data.driftPerDay.u, d))}, {w.drift.of(data.spans.length)}</span>}
      {data?.bySlope?.likely && <span class="hint" data-testid="slope-forecast">{w.drift.slope(dayClock(data.bySlope.likely, zone.value))}{data.bySlope.earliest && ` ${w.drift.earliest(dayClock(data.bySlope.earliest, zone.value))}`}</span>}
    </div>
  );
}
