import type { LimitBand, Measurand } from '../contract';
import { apart, decimalsOf, fixed } from '../format/number';
import { words } from '../words';

export const limitOf = (limits: readonly LimitBand[], measurand: Measurand) => limits.find(l => l.measurand === measurand);

/** The limit that a value has passed; null while it is inside or has none. */
function passed(value: number | null | undefined, limit: LimitBand | undefined): { value: number; side: 'below' | 'above'; at: number } | null {
  if (value === null || value === undefined || !limit) return null;
  if (limit.low !== null && value < limit.low) return { value, side: 'below', at: limit.low };
  return limit.high !== null && value > limit.high ? { value, side: 'above', at: limit.high } : null;
}

/** On which side of its limits a value stands, in words; null while it is inside or has none. `decimals` are those that the value is written with. */
export function beyond(value: number | null | undefined, limit: LimitBand | undefined, decimals?: number): string | null {
  const over = passed(value, limit), own = limit ? decimalsOf(limit.measurand) : 0;
  return over && words[over.side](fixed(over.at, apart(over.value, over.at, decimals ?? own, own)[1]));
}

/** A value as it is written beside its limits: never with the look of the limit that it has passed. */
export function besideLimit(value: number | null | undefined, limit: LimitBand | undefined, decimals: number): string {
  const over = passed(value, limit);
  return fixed(value, over && limit ? apart(over.value, over.at, decimals, decimalsOf(limit.measurand))[0] : decimals);
}

/** 7.20 – 7.60, at least 0.80, at most 0.50. */
export function limitText(limit: LimitBand | undefined): string {
  if (!limit) return '';
  const d = decimalsOf(limit.measurand);
  if (limit.low !== null && limit.high !== null) return `${fixed(limit.low, d)}\u2009\u2013\u2009${fixed(limit.high, d)}`;
  return limit.low !== null ? `\u2265 ${fixed(limit.low, d)}` : `\u2264 ${fixed(limit.high, d)}`;
}
