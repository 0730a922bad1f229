// Times on the clock of the site, whatever the browser's own zone is.

import { locale } from './language';

const makers = new Map<string, Intl.DateTimeFormat>();

function maker(zone: string, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const key = zone + JSON.stringify(options);
  let made = makers.get(key);
  if (!made) {
    try {
      made = new Intl.DateTimeFormat(locale, { ...options, timeZone: zone, hourCycle: 'h23' });
    } catch {
      made = new Intl.DateTimeFormat(locale, { ...options, timeZone: 'UTC', hourCycle: 'h23' });
    }
    makers.set(key, made);
  }
  return made;
}

const at = (time: string | number) => new Date(time);

/** 14:05 */
export const clock = (time: string | number, zone: string) => maker(zone, { hour: '2-digit', minute: '2-digit' }).format(at(time));

/** 14:05:09 */
export const clockSeconds = (time: string | number, zone: string) =>
  maker(zone, { hour: '2-digit', minute: '2-digit', second: '2-digit' }).format(at(time));

/** Tue 3 Mar */
export const dayOnly = (time: string | number, zone: string) => maker(zone, { weekday: 'short', day: 'numeric', month: 'short' }).format(at(time));

/** Tue 3 Mar, 14:05 */
export const dayClock = (time: string | number, zone: string) =>
  maker(zone, { weekday: 'short', day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' }).format(at(time));

/** 3 Mar 2026, 14:05 */
export const fullClock = (time: string | number, zone: string) =>
  maker(zone, { day: 'numeric', month: 'short', year: 'numeric', hour: '2-digit', minute: '2-digit' }).format(at(time));

/** The value of a datetime-local field for a moment: 2026-03-03T14:05 on the site's clock. */
export function toField(time: number, zone: string): string {
  const parts = new Map(
    maker(zone, { year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit' })
      .formatToParts(at(time)).map(p => [p.type, p.value]));
  const g = (type: string) => parts.get(type as Intl.DateTimeFormatPartTypes) ?? '';
  return `${g('year')}-${g('month')}-${g('day')}T${g('hour')}:${g('minute')}`;
}

/** The moment that a datetime-local value names on the site's clock; null when it names none, or one before 1970. In the hour that comes twice it is the first. */
export function fromField(text: string, zone: string): number | null {
  const match = /^(\d{4})-(\d\d)-(\d\d)T(\d\d):(\d\d)/.exec(text);
  if (!match) return null;
  const [, y, mo, d, h, mi] = match.map(Number) as [number, number, number, number, number, number];
  // A year that is being retyped passes through 0002, which Date.UTC takes for 1902.
  if (y < 1970) return null;
  const asUtc = Date.UTC(y, mo - 1, d, h, mi);
  const offsetAt = (t: number) => Date.parse(toField(t, zone) + ':00Z') - Math.floor(t / 60_000) * 60_000;
  const candidates = [asUtc - offsetAt(asUtc - 86_400_000), asUtc - offsetAt(asUtc + 86_400_000), asUtc - offsetAt(asUtc)];
  const right = candidates.filter(t => toField(t, zone) === text.slice(0, 16));
  return right.length > 0 ? Math.min(...right) : candidates[2]!;
}
