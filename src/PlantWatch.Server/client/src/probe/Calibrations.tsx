import { CalibrateLink } from '../calibrate/CalibrateLink';
import type { CalibrationView, ProbeInfo } from '../contract';
import { fullClock } from '../format/zone';
import { zone } from '../live/store';
import { link } from '../router';
import { words } from '../words';
import { correction } from './OfferCard';

/** All calibrations of a probe, newest first. */
export function Calibrations({ probe, all }: { probe: ProbeInfo; all: CalibrationView[] }) {
  return (
    <section class="sheet card later" data-testid="calibrations">
      <h2>{words.probe.history}</h2>
      <CalibrateLink probe={probe} />
      {all.length === 0 ? <p class="hint">{words.probe.noHistory}</p> : (
        <ul class="fault-list">{all.map(c => (
          <li key={c.id} class={`fault k-${c.status}`} data-testid="calibration" data-status={c.status}>
            <div class="pump-head"><b>{c.kind === 'verification' ? words.calibrationKind.verification : correction(c, probe)}</b><span class="fault-state">{words.calibrationStatus[c.status]}</span></div>
            <p class="hint">{words.calibrationKind[c.kind]}{c.work?.map(k => `, ${words.inText(words.calibrate.work.kinds[k])}`)}; {words.probe.proposedBy(c.proposedBy, fullClock(c.proposedAt, zone.value))}{c.note && `: ${c.note}`}
              {c.decidedBy && <><br />{words.probe.decidedBy(words.calibrationStatus[c.status], c.decidedBy, c.decidedAt ? fullClock(c.decidedAt, zone.value) : '')}{c.decision && `: ${c.decision}`}</>}
              {c.holdsFrom && <><br />{words.probe.holdsFrom} {fullClock(c.holdsFrom, zone.value)}</>}
              {c.sheet && <><br /><a href={link('sheet', c.id)} data-testid="to-sheet">{words.calibrate.done.sheet}</a>: {c.reviewedBy ? `${c.objected ? words.calibrate.sheet.objected : words.calibrate.sheet.reviewer} ${c.reviewedBy}` : words.calibrate.sheet.notReviewed}</>}</p>
          </li>))}</ul>)}
    </section>
  );
}
