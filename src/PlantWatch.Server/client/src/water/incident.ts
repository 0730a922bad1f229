import type { ClockTest, HoldRow } from '../contract.incident';
import { fixed, grouped } from '../format/number';
import { words } from '../words';

const w = words.incident;

/** A figure without idle zeros: 2, 2.4, 12.75. */
export const plain = (value: number, decimals = 2): string => fixed(value, decimals).replace(/\.?0+$/, '');

/** Minutes as people say a hold: 25 min, 12 h 45 min. */
export function holdTime(minutes: number): string {
  const whole = Math.max(0, Math.ceil(minutes - 1e-6));
  if (whole < 120) return `${whole} ${w.minutes}`;
  const rest = whole % 60;
  return `${Math.floor(whole / 60)} ${w.hours}${rest ? ` ${String(rest).padStart(2, '0')} ${w.minutes}` : ''}`;
}

/** What a row counts, in its own unit. */
export const amount = (row: HoldRow, value: number): string => row.basis === 'contact_time' ? grouped(value) : plain(value, 1);
export const unitOfRow = (row: HoldRow): string => row.basis === 'contact_time' ? w.contact : w.minutes;

/** The cyanurate a row is for, as people say it. */
export function cyanurateOf([low, high]: [number, number]): string {
  if (high < 1) return w.row.without;
  return w.row.cyanurate(low < 1 ? w.row.upTo(plain(high, 0)) : `${plain(low, 0)}\u2013${plain(high, 0)}`);
}

/** The pH a row holds for. */
export const phOf = (row: HoldRow): string => row.lowestPh === null ? w.row.upTo(plain(row.highestPh)) : `${plain(row.lowestPh)}\u2013${plain(row.highestPh)}`;

/** The place of a test in words. */
export const placeOf = (test: ClockTest): string => test.lowestPoint ? w.lowest : w.places[test.place] ?? test.place;
