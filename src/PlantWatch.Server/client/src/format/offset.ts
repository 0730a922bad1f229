// How far a zone's clock stands from UTC, and moments moved by whole days of its calendar: a day of 23 or 25 hours is one day.

const day = 86_400_000, quarter = 900_000;

/** Milliseconds that the clock of a zone is ahead of UTC at a moment. Remembered by the quarter of an hour: no zone changes within one. */
export type Offsets = (t: number) => number;

const known = new Map<string, Offsets>();

export function offsetsOf(zone: string): Offsets {
  let found = known.get(zone);
  if (!found) known.set(zone, found = makeOffsets(zone));
  return found;
}

function makeOffsets(zone: string): Offsets {
  let maker: Intl.DateTimeFormat;
  const parts = { year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit', second: '2-digit', hourCycle: 'h23' } as const;
  try { maker = new Intl.DateTimeFormat('en-GB', { ...parts, timeZone: zone }); } catch { maker = new Intl.DateTimeFormat('en-GB', { ...parts, timeZone: 'UTC' }); }
  const cells = new Map<number, number>();
  return t => {
    const cell = Math.floor(t / quarter);
    let offset = cells.get(cell);
    if (offset === undefined) {
      const at = cell * quarter, said = new Map(maker.formatToParts(at).map(p => [p.type, Number(p.value)]));
      const g = (k: Intl.DateTimeFormatPartTypes) => said.get(k) ?? 0;
      offset = Date.UTC(g('year'), g('month') - 1, g('day'), g('hour'), g('minute'), g('second')) - at;
      cells.set(cell, offset);
    }
    return offset;
  };
}

/** The moments at which a zone's clock shows a local time, first first: two in the hour that comes twice, none in the one that is left out. */
function moments(local: number, offset: Offsets): number[] {
  const found = new Set([local - offset(local - day), local - offset(local + day)]);
  return [...found].filter(t => t + offset(t) === local).sort((a, b) => a - b);
}

/**
 * The moment whole days of the calendar later (or earlier) with the same time on the clock. Null where the clock never showed that time on
 * that day, and for the second time round of an hour that came twice: its first time round stands there already.
 */
export function movedByDays(t: number, days: number, offset: Offsets): number | null {
  const local = t + offset(t);
  const own = moments(local, offset);
  if (own.length > 1 && own[0]! < t) return null;
  return moments(local + days * day, offset)[0] ?? null;
}

/** The same for the end of a window, which must be somewhere: where the clock never showed that time, as if it had not been changed. */
export function edgeMovedByDays(t: number, days: number, offset: Offsets): number {
  return movedByDays(t, days, offset) ?? t + days * day + (offset(t) - offset(t + days * day));
}
