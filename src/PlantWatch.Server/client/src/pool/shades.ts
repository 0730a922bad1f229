import type { Columns } from './columns';

/** A time in which a sample cell had no flow, and for which share of it. */
export interface Shade { from: number; to: number; share: number }

/** The times without flow, from the series of a flow switch. A gap says nothing and shades nothing. */
export function shadesOf([t, , , flow]: Columns, until: number): Shade[] {
  const found: Shade[] = [];
  for (let i = 0; i < t.length; i++) {
    const share = flow[i] == null ? 0 : 1 - Math.min(1, Math.max(0, flow[i]!));
    if (share < 0.02) continue;
    const to = i + 1 < t.length ? t[i + 1]! : Math.max(t[i]!, until);
    const last = found.at(-1);
    if (last && last.to === t[i] && Math.abs(last.share - share) < 0.02) last.to = to;
    else found.push({ from: t[i]!, to, share });
  }
  return found;
}
