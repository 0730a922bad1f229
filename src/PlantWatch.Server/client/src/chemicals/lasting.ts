import type { StockOutlookView, StockUnit, StockView } from '../contract.stock';
import { fixed } from '../format/number';
import { words } from '../words';

const w = words.chemicals;

/** An amount with its unit: three figures at most, for nobody counts drops in a drum. */
export function amountOf(value: number | null | undefined, unit: StockUnit): string {
  if (value === null || value === undefined) return '\u2013';
  const size = Math.abs(value);
  return `${fixed(value, size >= 100 || size < 0.0005 ? 0 : size >= 1 ? 1 : size >= 0.1 ? 2 : 3)}\u00a0${w.units[unit]}`;
}

/** A sum of money, without a sign: which money it is the plant knows. */
export const money = (value: number | null | undefined): string => (value === null || value === undefined ? '\u2013' : fixed(value, Math.abs(value) >= 1000 ? 0 : Math.abs(value) >= 1 || value === 0 ? 2 : 4));

/** Whole days, rounded to the careful side: what lasts nine days and a half lasts nine. */
const days = (value: number) => fixed(Math.floor(value), 0);

/** In words how long a stock lasts; null when nobody can say. */
export function lasting(found: StockOutlookView | null): string | null {
  if (!found || (found.middle === null && found.perDay <= 0)) return null;
  if (found.latest === 0) return w.empty;
  if (found.earliest === null) return w.overYear;
  return found.latest === null ? w.lastsLonger(days(found.earliest)) : w.lasts(days(found.earliest), days(found.latest));
}

/** Products that may be used up within a week, or before an order would come, soonest first. */
export const runningOut = (products: StockView[]): StockView[] => products
  .filter(p => p.outlook?.earliest != null && (p.runsOut || p.outlook.earliest <= 7)).sort((a, b) => a.outlook!.earliest! - b.outlook!.earliest!);
