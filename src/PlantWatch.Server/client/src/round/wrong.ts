import { build, type Errors } from '../check/build';
import type { Measurand } from '../contract';
import type { Screen, Stop } from './round';

// What was typed on a round and cannot be sent, by field and by the screen that it stands on.

/** The screen that a field stands on; null for one that no screen shows. */
export function screenOf(stop: Stop, field: string): Screen | null {
  const m = field.replace(/^dilution-/, '') as Measurand;
  if (stop.what.includes(m)) return m;
  if (field.startsWith('panel-') || field === 'bathers' || field === 'note' || field === 'bottom') return 'around';
  return field === 'point' || field === 'place' || field === 'when' ? 'sample' : null;
}

/** What stands wrong in a sample as it was typed; that nothing was tested is no fault of a field. */
export function wrongIn(stop: Stop, zone: string, now: number): Errors {
  const rows = Object.fromEntries(Object.entries(stop.draft.rows).filter(([m]) => stop.what.includes(m as Measurand)));
  return Object.fromEntries(Object.entries(build({ ...stop.draft, rows }, '-', zone, now).errors).filter(([field]) => screenOf(stop, field) !== null));
}

/** The same of one screen. */
export const wrongOn = (stop: Stop, screen: Screen, zone: string, now: number): Errors => Object.fromEntries(Object.entries(wrongIn(stop, zone, now)).filter(([field]) => screenOf(stop, field) === screen));
