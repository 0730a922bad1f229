import type { LimitBand, Measurand } from '../contract';
import { decimalsOf, fixed } from '../format/number';
import { words } from '../words';

export const limitOf = (limits: readonly LimitBand[], measurand: Measurand) => limits.find(l => l.measurand === measurand);

/** On which side of its limits a value stands, in words; null while it is inside or has none. */
export function beyond(value: number | null | undefined, limit: LimitBand | undefined): string | null {
  if (value === null || value === undefined || !limit) return null;
  const d = decimalsOf(limit.measurand);
  if (limit.low !== null && value < limit.low) return words.below(fixed(limit.low, d));
  if (limit.high !== null && value > limit.high) return words.above(fixed(limit.high, d));
  return null;
}

/** 7.20 – 7.60, at least 0.80, at most 0.50. */
export function limitText(limit: LimitBand | undefined): string {
  if (!limit) return '';
  const d = decimalsOf(limit.measurand);
  if (limit.low !== null && limit.high !== null) return `${fixed(limit.low, d)}\u2009\u2013\u2009${fixed(limit.high, d)}`;
  return limit.low !== null ? `\u2265 ${fixed(limit.low, d)}` : `\u2264 ${fixed(limit.high, d)}`;
}
