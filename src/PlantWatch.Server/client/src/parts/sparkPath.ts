import type { LimitBand, ReadingPoint, SeriesView } from '../contract';

export interface Drawn { path: string; band: { y: number; height: number } | null }

/** The outline of a small strip: gaps break the line, and the scale always holds the limits that stand near the values. */
export function sparkPath(
  view: SeriesView | null, newest: ReadingPoint | null, limit: LimitBand | undefined, from: number, to: number, box: { width: number; height: number }): Drawn {
  const t = view ? [...view.t] : [];
  const v: (number | null)[] = view ? [...(view.corrected ?? view.mean)] : [];
  if (newest && newest.t > (t.at(-1) ?? 0)) { t.push(newest.t); v.push(newest.v); }
  const known = v.filter((y): y is number => y !== null);
  if (known.length === 0) return { path: '', band: null };
  let low = Math.min(...known), high = Math.max(...known);
  const reach = Math.max(high - low, Math.abs(high) * 0.01, 0.02);
  if (limit?.low != null && limit.low < high + 3 * reach) low = Math.min(low, limit.low);
  if (limit?.high != null && limit.high > low - 3 * reach) high = Math.max(high, limit.high);
  const pad = Math.max((high - low) * 0.12, 0.01);
  low -= pad; high += pad;
  const y = (value: number) => box.height * (1 - (value - low) / (high - low));
  const x = (time: number) => box.width * (time - from) / (to - from);
  let path = '', pen = false;
  t.forEach((time, i) => {
    const value = v[i];
    if (value === null || value === undefined || time < from) { pen = false; return; }
    // Alone between gaps it is a dot, not nothing.
    path += `${pen ? 'L' : 'M'}${x(time).toFixed(1)} ${y(value).toFixed(1)}${!pen && v[i + 1] == null ? 'h.1' : ''}`;
    pen = true;
  });
  const clamp = (n: number) => Math.max(0, Math.min(box.height, n));
  const top = clamp(limit?.high != null ? y(limit.high) : 0), bottom = clamp(limit?.low != null ? y(limit.low) : box.height);
  return { path, band: limit && bottom > top && path !== '' ? { y: top, height: bottom - top } : null };
}
