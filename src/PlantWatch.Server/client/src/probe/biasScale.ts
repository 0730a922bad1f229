import type { ProbeHistory } from '../contract.probe';

const day = 86_400_000;

export interface At { t: number; value: number; u: number; doubted: boolean }
export interface BiasScale { from: number; to: number; reach: number }

/** What the chart of the bias holds within a time: the points after checks, those to come, and the runs between works on the probe. */
export function biasRuns(history: Pick<ProbeHistory, 'bias' | 'calibrations'>, since: number): { runs: At[][]; set: At[]; works: number[] } {
  // Looking alone changes nothing; work on the probe does, whatever became of the numbers.
  const works = history.calibrations.filter(c => c.holdsFrom !== null && (c.work?.length || (c.status !== 'rejected' && c.kind !== 'verification'))).map(c => Date.parse(c.holdsFrom!)).filter(t => t >= since).sort((a, b) => a - b);
  const points = history.bias.map(p => ({ t: Date.parse(p.at), value: p.value, u: p.u, doubted: p.doubted })).filter(p => p.t >= since);
  const runs: At[][] = [];
  let next = 0;
  for (const p of points) {
    // What was done to the probe parts its past from its present: no line is drawn across.
    const crossed = next < works.length && works[next]! <= p.t;
    while (next < works.length && works[next]! <= p.t) next++;
    if (runs.length === 0 || crossed) runs.push([]);
    runs.at(-1)!.push(p);
  }
  return { runs, set: points, works };
}

/** The ends of both axes. Both limits of maintenance are always in sight; that of specification only when the bias comes near it. */
export function biasScale(points: At[], ahead: At[], maintenanceAt: number, outAt: number): BiasScale {
  const all = [...points, ...ahead];
  const most = Math.max(0, ...all.map(p => Math.abs(p.value) + p.u));
  const reach = Math.max(maintenanceAt * 1.25, Math.min(most * 1.08, Math.max(maintenanceAt * 3, ...all.map(p => Math.abs(p.value) * 1.3))), most > outAt * 0.75 ? outAt * 1.1 : 0) || 1;
  const from = Math.min(...all.map(p => p.t)), to = Math.max(...all.map(p => p.t));
  return { from, to: Math.max(to, from + day / 4), reach };
}

/** A few round days along the axis. */
export function dayTicks(from: number, to: number, most: number): number[] {
  const days = (to - from) / day;
  const step = [0.25, 0.5, 1, 2, 7, 14, 30, 60, 90, 180, 365, 730].find(s => days / s <= most) ?? 1460;
  const first = Math.ceil(from / (step * day)) * step * day;
  const ticks: number[] = [];
  for (let t = first; t <= to; t += step * day) ticks.push(t);
  return ticks;
}
