import type { ProbeInfo } from '../contract';
import { fixed, unitText } from '../format/number';
import { fullClock } from '../format/zone';
import { probeViews, reading, zone } from '../live/store';
import { Age } from '../parts/Age';
import type { Known } from '../parts/Know';
import { words } from '../words';

const w = words.know.probe;

/** How the number of a probe is known: its signal, what corrected it, the tests that judge it. */
export function ofProbe(probe: ProbeInfo): Known {
  const view = probeViews.peek().get(probe.id), point = reading(probe.id).peek(), held = view?.calibration;
  const of = (x: { value: number; u: number }) => `${fixed(x.value, probe.decimals)} \u00b1 ${fixed(x.u, probe.decimals)} ${unitText(probe.unit)}`.trim();
  const corrected = held && (held.kind === 'offset' || held.kind === 'two_point');
  const why = view?.reasons.map(r => r.text).join('. ');
  return {
    from: <>{w.from(probe.name, words.poolPage.origin[probe.origin])} {corrected && held.holdsFrom ? w.corrected(words.calibrationKind[held.kind], fullClock(held.holdsFrom, zone.value), held.decidedBy ?? held.proposedBy) : w.asReceived}{probe.poolId === null && ` ${w.common}`}</>,
    age: point ? <>{w.measured(fullClock(point.t, zone.value))} <Age at={point.t} />. {w.every(probe.everySeconds)}{view?.stale && <b> {w.silent}</b>}</> : words.overview.noReading,
    sure: <>{words.standing[view?.standing ?? 'unknown']}.{why && ` ${why}.`} {probe.measurand === 'sample_flow' ? '' : view?.believed && view.judgedAt ? <>{w.believed(of(view.believed), view.pairs)} <Age at={view.judgedAt} />.</> : w.unjudged}{point && !point.g && <b> {w.notGood}</b>}</>,
    means: words.know.means[probe.measurand],
    source: w.source,
  };
}
