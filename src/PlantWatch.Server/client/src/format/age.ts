import { locale } from './language';

/** The letter of a day in the page's language: d, j, T. */
const day = new Intl.NumberFormat(locale, { style: 'unit', unit: 'day', unitDisplay: 'narrow' }).formatToParts(2).find(p => p.type === 'unit')?.value.trim() ?? 'd';

/** How long ago, in the fewest words that still matter: 8 s, 4 min, 3 h 05 min, 2 d 4 h. */
export function span(milliseconds: number): string {
  const seconds = Math.max(0, Math.floor(milliseconds / 1000));
  if (seconds < 90) return `${seconds} s`;
  const minutes = Math.floor(seconds / 60);
  if (minutes < 90) return `${minutes} min`;
  const hours = Math.floor(minutes / 60);
  if (hours < 48) return `${hours} h ${String(minutes % 60).padStart(2, '0')} min`;
  const days = Math.floor(hours / 24);
  return days < 14 ? `${days} ${day} ${hours % 24} h` : `${days} ${day}`;
}

/** Age at a moment; null for what never happened. */
export function ageAt(now: number, then: string | number | null | undefined): number | null {
  if (then === null || then === undefined) return null;
  const at = typeof then === 'number' ? then : Date.parse(then);
  return Number.isFinite(at) ? now - at : null;
}
