import { movedByDays, type Offsets } from '../format/offset';
import type { Columns } from './columns';

/** The line of another day, moved to where this one is: times rising, a null where it broke. */
export interface Ghost { t: number[]; v: (number | null)[] }

export const days = { yesterday: 1, last_week: 7 } as const;
export type Compared = keyof typeof days;

/** A month and more of another day beside its own says nothing. */
export const longestCompared = 32 * 86_400_000;

/** The past readings under the clock of today. What stood at a time that this day's clock never shows is left out, and the line broken there. */
export function ghostOf(past: Columns, by: number, offset: Offsets): Ghost {
  const [t, , , raw, corrected] = past;
  const out: Ghost = { t: [], v: [] };
  for (let i = 0; i < t.length; i++) {
    const at = movedByDays(t[i]!, by, offset);
    if (at === null || (out.t.length > 0 && at <= out.t.at(-1)!)) { if (out.v.length > 0) out.v[out.v.length - 1] ??= null; continue; }
    out.t.push(at);
    out.v.push(corrected[i] ?? raw[i] ?? null);
  }
  return out;
}

/** What the other day shows at a time; null in a gap and where nothing of it is near. */
export function ghostAt(ghost: Ghost | null, at: number, near: number): number | null {
  if (!ghost || ghost.t.length === 0) return null;
  let a = 0, b = ghost.t.length - 1;
  while (a < b) { const m = (a + b) >> 1; if (ghost.t[m]! < at) a = m + 1; else b = m; }
  const i = a > 0 && at - ghost.t[a - 1]! < ghost.t[a]! - at ? a - 1 : a;
  return Math.abs(ghost.t[i]! - at) <= near ? ghost.v[i]! : null;
}

/** Least and most of it in a window; null where it shows nothing. */
export function ghostRange(ghost: Ghost | null, from: number, to: number): [number, number] | null {
  let low = Infinity, high = -Infinity;
  ghost?.t.forEach((t, i) => { const v = ghost.v[i]; if (t >= from && t <= to && v != null) { low = Math.min(low, v); high = Math.max(high, v); } });
  return low <= high ? [low, high] : null;
}
