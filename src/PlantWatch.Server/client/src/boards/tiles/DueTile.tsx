import { useComputed } from '@preact/signals';
import type { DueView } from '../../contract';
import { clock, dayClock } from '../../format/zone';
import { now } from '../../live/clock';
import { nameOf, poolViews, probeViews, zone } from '../../live/store';
import { list } from '../../overview/DueLine';
import { PoolGlyph, TickGlyph } from '../../parts/Glyph';
import { link } from '../../router';
import { words } from '../../words';
import { coming } from '../coming';
import { poolsOf, probesOf } from '../resolve';
import { aboutOf, type TileProps } from './props';

const w = words.boards;

function Line({ due, soon, wall }: { due: DueView; soon?: boolean; wall: boolean }) {
  const name = nameOf(due.poolId), word = soon ? w.coming : due.overdue ? words.overview.overdue : words.overview.due;
  return (
    <li class={due.overdue ? 'overdue' : ''} data-testid={`due-${due.poolId}`}><PoolGlyph state={soon ? 'normal' : 'due'} />
      <span><b>{word}</b> {clock(due.dueAt, zone.value)}: <b>{wall || soon ? name : <a href={link('check', due.poolId)}>{name}</a>}</b>, {list(due.what)}</span></li>
  );
}

/** Probes whose calibration is due, or will be in the hours ahead. */
function calibrations(p: TileProps, until: number) {
  const pools = new Set(poolsOf(p.tile, aboutOf(p)).map(x => x.id));
  return probesOf({ ...p.tile, of: [], measurands: [] }, aboutOf(p)).filter(x => x.poolId === null || pools.has(x.poolId)).flatMap(x => {
    const view = probeViews.value.get(x.id);
    return view?.calibrationDueAt && Date.parse(view.calibrationDueAt) <= until ? [{ id: x.id, at: view.calibrationDueAt, overdue: view.calibrationOverdue === true }] : [];
  });
}

/** The checks and calibrations that are due, the oldest first, and what comes in the hours ahead. */
export function DueTile(p: TileProps) {
  const minute = useComputed(() => Math.floor(now.value / 60_000) * 60_000).value;
  const pools = poolsOf(p.tile, aboutOf(p));
  const due = pools.flatMap(x => poolViews.value.get(x.id)?.due ?? []).sort((a, b) => (a.dueAt < b.dueAt ? -1 : 1));
  const soon = coming(pools, p.tile.aheadHours, zone.value, minute), probes = calibrations(p, minute + p.tile.aheadHours * 3_600_000);
  if (pools.length > 0 && pools.every(x => !poolViews.value.has(x.id))) return <p class="hint">{words.overview.noState}</p>;
  if (due.length + soon.length + probes.length === 0) return <p class="mark quiet"><TickGlyph />{words.poolPage.nothingDue}</p>;
  return (
    <ul class="due">
      {due.map((d, i) => <Line key={`d${i}`} due={d} wall={p.wall} />)}
      {probes.map(d => <li key={d.id}><PoolGlyph state="due" /><span>{p.wall ? nameOf(d.id) : <a href={link('calibrate', d.id)}>{nameOf(d.id)}</a>}: {(d.overdue ? words.calibrate.overdue : words.calibrate.due)(dayClock(d.at, zone.value))}</span></li>)}
      {soon.map((d, i) => <Line key={`s${i}`} due={d} soon wall={p.wall} />)}
    </ul>
  );
}
