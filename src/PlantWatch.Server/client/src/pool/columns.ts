import type { ReadingPoint, SeriesView } from '../contract';

/** The columns of one strip as the chart wants them: time, min, max, raw, corrected. */
export type Columns = [number[], (number | null)[], (number | null)[], (number | null)[], (number | null)[]];

export const noColumns = (): Columns => [[], [], [], [], []];

export function columnsOf(view: SeriesView): Columns {
  const coarse = view.tier !== 'raw';
  const none = () => view.t.map(() => null);
  return [[...view.t], coarse ? [...view.min] : none(), coarse ? [...view.max] : none(), [...view.mean], view.corrected ? [...view.corrected] : none()];
}

/** Appends a live reading to single readings; a silence of more than three intervals is a gap. False when it is not newer. */
export function append(columns: Columns, point: ReadingPoint, corrected: boolean, everySeconds: number): boolean {
  const [t, min, max, raw, cor] = columns;
  const last = t.at(-1);
  if (last !== undefined && point.t <= last) return false;
  if (last !== undefined && point.t - last > everySeconds * 3_000) push(last + 1, null, null);
  push(point.t, point.r, corrected || point.v !== point.r ? point.v : null);
  return true;

  function push(at: number, r: number | null, v: number | null): void {
    t.push(at); min.push(null); max.push(null); raw.push(r); cor.push(v);
  }
}
