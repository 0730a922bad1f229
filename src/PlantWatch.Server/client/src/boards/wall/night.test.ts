import { describe, expect, it } from 'vitest';
import { isNight } from './night';

const at = (iso: string, from: string | null = '21:30', until: string | null = '06:00') => isNight(from, until, 'Europe/London', Date.parse(iso));

describe('the night of a wall display', () => {
  it('goes over midnight, on the clock of the site', () => {
    expect([at('2026-12-01T21:29:59Z'), at('2026-12-01T21:30:00Z'), at('2026-12-02T05:59:00Z'), at('2026-12-02T06:00:00Z')]).toEqual([false, true, true, false]);
    // In summer the clock of the site is an hour on.
    expect(at('2026-07-01T20:30:00Z')).toBe(true);
  });

  it('may lie within a day, and there may be none', () => {
    expect([at('2026-12-01T13:00:00Z', '12:00', '14:00'), at('2026-12-01T15:00:00Z', '12:00', '14:00'), at('2026-12-01T23:00:00Z', null, null)]).toEqual([true, false, false]);
  });
});
