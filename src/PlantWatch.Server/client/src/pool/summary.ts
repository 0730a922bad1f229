import type { Columns } from './columns';

/** What a strip shows, for who does not see it. Times in Unix milliseconds. */
export interface Summary { last: { t: number; v: number } | null; least: { t: number; v: number } | null; most: { t: number; v: number } | null; gaps: number; longestGap: number }

/** The last, least and most of the window, of the corrected line where there is one, and its gaps with the longest of them. */
export function summaryOf([t, min, max, raw, corrected]: Columns, from: number, to: number): Summary {
  const out: Summary = { last: null, least: null, most: null, gaps: 0, longestGap: 0 };
  const two = corrected.some(v => v !== null);
  let brokenAt: number | null = null;
  t.forEach((at, i) => {
    if (at < from || at > to) return;
    const v = (two ? corrected[i] : null) ?? raw[i] ?? null;
    if (v === null) { brokenAt ??= at; return; }
    if (brokenAt !== null) { out.gaps++; out.longestGap = Math.max(out.longestGap, at - brokenAt); brokenAt = null; }
    const low = two ? v : min[i] ?? v, high = two ? v : max[i] ?? v;
    if (!out.least || low < out.least.v) out.least = { t: at, v: low };
    if (!out.most || high > out.most.v) out.most = { t: at, v: high };
    out.last = { t: at, v };
  });
  // A gap that has not ended runs to the end of the window.
  if (brokenAt !== null) { out.gaps++; out.longestGap = Math.max(out.longestGap, to - brokenAt); }
  return out;
}
