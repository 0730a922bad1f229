import { toField } from '../../format/zone';

const minutes = (clock: string) => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3, 5));

/** Whether it is night on the site's clock; a night goes over midnight where it ends before it begins. */
export function isNight(from: string | null, until: string | null, zone: string, now: number): boolean {
  if (from === null || until === null) return false;
  const t = minutes(toField(now, zone).slice(11)), a = minutes(from), b = minutes(until);
  return a <= b ? t >= a && t < b : t >= a || t < b;
}
