import type { ProbeInfo } from '../../contract';
import { fixed, unitText } from '../../format/number';
import { headingOf, limitingPool, limitsOfPool, nameOf, reading } from '../../live/store';
import { limitOf, limitText } from '../../parts/beyond';
import { LiveValue } from '../../parts/LiveValue';
import { StandingMark } from '../../parts/StandingMark';
import { link } from '../../router';
import { words } from '../../words';
import { probesOf } from '../resolve';
import { Nothing } from './Nothing';
import { aboutOf, type TileProps } from './props';

/** What was received, where something was corrected. */
function Raw({ probe }: { probe: ProbeInfo }) {
  const point = reading(probe.id).value;
  return point && point.r !== point.v ? <p class="hint">{words.strips.raw} {fixed(point.r, probe.decimals)} {unitText(probe.unit)}</p> : null;
}

function One({ probe, heading, p }: { probe: ProbeInfo; heading: string; p: TileProps }) {
  const limit = p.tile.limits ? limitOf(limitsOfPool(limitingPool(probe, p.pool)), probe.measurand) : undefined;
  return (
    <li class="readout-one" data-testid={`readout-${probe.id}`}>
      <p class="label">{p.wall ? heading : <a href={link('probe', probe.id)}>{heading}</a>}</p>
      <LiveValue probe={probe} limit={limit} testId={false} />
      <p class="readout-foot"><StandingMark probeId={probe.id} testId={false} />{limit && <span class="hint">{limitText(limit)}</span>}</p>
      {p.tile.raw && <Raw probe={probe} />}
    </li>
  );
}

/** The number of each probe with its age, its standing and its limits. */
export function ReadoutTile(p: TileProps) {
  const probes = probesOf(p.tile, aboutOf(p));
  if (probes.length === 0) return <Nothing of={words.boards.noProbes} />;
  return <ul class="readouts">{probes.map(x => <One key={x.id} probe={x} heading={p.pool === null ? nameOf(x.id) : headingOf(x, probes)} p={p} />)}</ul>;
}
