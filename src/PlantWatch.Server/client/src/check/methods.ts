import type { CellLook, Measurand } from '../contract';
import { readTyped } from '../format/number';
import type { Row } from './draft';

// The sample that is taken when nothing else is said, and what a tablet stands for in it: 2000/V mg/L (Core/Chemistry/Methods/TabletCount).
export const usualSample = '50';
const perTablet = 2000;

/** Alkalinity and hardness are counted in tablets; cyanuric acid by tablet is turbidity, not a count. */
export const countsTablets = (m: Measurand, row: Row) => row.method === 'tablet_count' && (m === 'total_alkalinity' || m === 'calcium_hardness');

/** The step of the count in mg/L; null while the sample is none. */
export function tabletStep(row: Row): number | null {
  const typed = readTyped(row.sample ?? usualSample);
  return typed.kind === 'number' && typed.value >= 10 && typed.value <= 500 ? perTablet / typed.value : null;
}

/** What so many tablets mean: the middle of the last one. Null while there is no count. */
export function tabletResult(row: Row): number | null {
  const typed = readTyped(row.tablets ?? '');
  const step = tabletStep(row);
  if (typed.kind !== 'number' || !Number.isInteger(typed.value) || typed.value < 1 || typed.value > 100 || step === null) return null;
  return Math.round((typed.value * step - step / 2) * 10) / 10;
}

/** What can look odd in the cell of a test by colour. */
export function looksOf(m: Measurand, row: Row): CellLook[] {
  if (row.method !== 'photometer' && row.method !== 'comparator') return [];
  if (m === 'ph') return ['none', 'purple', 'cloudy'];
  return m === 'free_chlorine' || m === 'total_chlorine' || m === 'bromine' ? ['none', 'pink_flash', 'cloudy'] : [];
}
