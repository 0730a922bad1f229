import type { ProbeInfo } from '../../contract';
import { dayClock } from '../../format/zone';
import { nameOf, probeViews, zone } from '../../live/store';
import { StandingMark } from '../../parts/StandingMark';
import { link } from '../../router';
import { words } from '../../words';
import { probesOf } from '../resolve';
import { Nothing } from './Nothing';
import { aboutOf, type TileProps } from './props';

/** What wants care first; what is well keeps the order of the plant. */
const rank = (id: string) => ['failure', 'out_of_specification', 'check_function', 'maintenance_required', 'unknown', 'good'].indexOf(probeViews.value.get(id)?.standing ?? 'unknown');

function One({ probe, wall }: { probe: ProbeInfo; wall: boolean }) {
  const view = probeViews.value.get(probe.id), at = view?.calibrationDueAt;
  return (
    <li class="probe-line" data-testid={`standing-of-${probe.id}`}>
      <div class="probe-line-head"><b>{wall ? nameOf(probe.id) : <a href={link('probe', probe.id)}>{nameOf(probe.id)}</a>}</b><StandingMark probeId={probe.id} long testId={false} /></div>
      {view?.standing !== 'good' && view?.reasons.map((r, i) => <p key={i} class="reason">{r.text}</p>)}
      {at && <p class="hint">{view?.calibrationOverdue ? words.calibrate.overdue(dayClock(at, zone.value)) : words.calibrate.due(dayClock(at, zone.value))}</p>}
    </li>
  );
}

/** The standing of probes and why, with when they want to be calibrated. */
export function ProbesTile(p: TileProps) {
  const probes = [...probesOf(p.tile, aboutOf(p))].sort((a, b) => rank(a.id) - rank(b.id));
  return probes.length === 0 ? <Nothing of={words.boards.noProbes} /> : <ul class="probe-lines">{probes.map(x => <One key={x.id} probe={x} wall={p.wall} />)}</ul>;
}
