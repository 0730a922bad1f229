import type { BoundView, PackRowView } from '../contract.limits';
import { plain, unitText } from '../format/number';
import { words } from '../words';

const w = words.limits;

/** A row that sets a figure which is watched: neither a sentence nor a guide. */
export const isLimit = (row: PackRowView) => row.quantity !== 'sentence' && row.grade !== 'guide';

/** A row that concerns a pool, or may: doubt never sets it aside. */
export const concerns = (row: PackRowView) => isLimit(row) && row.pools.some(p => p.holds !== 'no');

/** A row that somebody has to answer: it concerns a pool, and is not merely listed. */
export const counts = (row: PackRowView) => isLimit(row) && row.pools.some(p => p.holds !== 'no' && p.measured);

/** Those that count, and how many of them a person has answered. */
export function progressOf(rows: PackRowView[]) {
  const all = rows.filter(counts);
  return { done: all.filter(r => r.confirmed).length, all: all.length };
}

export const trim = (value: number) => plain(Math.round(value * 1000) / 1000);

/** The range as people write it, without its unit. */
export function rangeText(range: Pick<BoundView, 'low' | 'high'>): string {
  const { low, high } = range;
  if (low != null && high != null) return w.between(trim(low), trim(high));
  return low != null ? w.least(trim(low)) : high != null ? w.most(trim(high)) : '';
}

/** What stands large on a row; empty for what can only be read. */
export const figureOf = (row: PackRowView): string => row.raisesLowBy != null ? w.raises(trim(row.raisesLowBy)) : rangeText(row);

export const unitWord = (unit: string) => unitText(unit);

/** The element of a row, to go to from what holds. */
export const anchorOf = (circuit: string, row: string) => `row-${circuit}-${row}`;
