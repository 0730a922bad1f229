import { dayClock } from '../format/zone';
import { now } from '../live/clock';
import { allProbes, nameOf, probeViews, zone } from '../live/store';
import { PoolGlyph } from '../parts/Glyph';
import { link } from '../router';
import { words } from '../words';

const soon = 3 * 86_400_000;

/** Probes whose calibration is due by the plant file or will be within days, and those whose last one nobody else has looked over. A date to plan by: it raises no alarm. */
export function DueProbes({ poolId }: { poolId: string }) {
  const due = [...allProbes.value.values()].filter(p => p.poolId === poolId).flatMap(p => {
    const view = probeViews.value.get(p.id);
    return view?.calibrationDueAt && Date.parse(view.calibrationDueAt) - now.value < soon ? [{ id: p.id, at: view.calibrationDueAt, overdue: view.calibrationOverdue === true }] : [];
  });
  const unseen = [...allProbes.value.values()].filter(p => p.poolId === poolId).flatMap(p => { const c = probeViews.value.get(p.id)?.calibration; return c?.waitsForReview ? [{ id: p.id, sheet: c.id }] : []; });
  if (due.length + unseen.length === 0) return null;
  return (
    <ul class="due" data-testid="due-probes">
      {due.map(d => (
        <li key={d.id}><PoolGlyph state="due" />
          <a class="due-probe" href={link('calibrate', d.id)}>{nameOf(d.id)}: {(d.overdue ? words.calibrate.overdue : words.calibrate.due)(dayClock(d.at, zone.value))}</a></li>))}
      {unseen.map(u => <li key={u.sheet}><PoolGlyph state="due" /><a class="due-probe" href={link('sheet', u.sheet)} data-testid="to-review">{words.calibrate.unseen(nameOf(u.id))}</a></li>)}
    </ul>
  );
}
