import type { CurveView } from '../contract.whatIf';

export type CurveColumn = 'ph' | 'saturation' | 'hocl' | 'share';

/** The value of a curve at a place, by straight line between its points; null outside of it or where it has none. */
export function valueAt(curve: CurveView, column: CurveColumn, at: number): number | null {
  const x = curve.at, y = curve[column];
  const i = x.findIndex(v => v >= at - 1e-9);
  if (i < 0 || y[i] === null || y[i] === undefined) return null;
  if (Math.abs(x[i]! - at) < 1e-9) return y[i]!;
  if (i === 0 || y[i - 1] === null) return null;
  const part = (at - x[i - 1]!) / (x[i]! - x[i - 1]!);
  return y[i - 1]! + part * (y[i]! - y[i - 1]!);
}

/** The places that a short table shows: round pH, or quarters of the dose. */
export function placesOf(curve: CurveView, dose: boolean): number[] {
  const first = curve.at[0], last = curve.at[curve.at.length - 1];
  if (first === undefined || last === undefined) return [];
  if (dose) return [0, 0.25, 0.5, 0.75, 1].map(part => part * last);
  return [6.8, 7.2, 7.6, 8, 8.4].filter(ph => ph >= first && ph <= last);
}

export const has = (curve: CurveView, column: CurveColumn) => curve[column].some(v => v !== null);
