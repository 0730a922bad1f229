import { describe, expect, it } from 'vitest';
import { edgeMovedByDays, movedByDays, offsetsOf } from './offset';

// The European Union changes its clocks at 01:00 UTC on the last Sunday of March and of October (Directive 2000/84/EC): in 2026 on 29 March and 25 October.
const berlin = offsetsOf('Europe/Berlin');
const at = (iso: string) => Date.parse(iso);

describe('moments moved by days of the calendar', () => {
  it('are 24 hours off on an ordinary day', () => expect(movedByDays(at('2026-05-05T10:00:00Z'), -1, berlin)).toBe(at('2026-05-04T10:00:00Z')));
  it('are 23 hours off over the day that lost an hour', () => expect(movedByDays(at('2026-03-29T10:00:00Z'), -1, berlin)).toBe(at('2026-03-28T11:00:00Z')));
  it('are 25 hours off over the day that won one', () => expect(movedByDays(at('2026-10-25T10:00:00Z'), -1, berlin)).toBe(at('2026-10-24T09:00:00Z')));
  it('are a week of 167 hours off over the change in March', () => expect(movedByDays(at('2026-04-01T10:00:00Z'), -7, berlin)).toBe(at('2026-03-25T11:00:00Z')));
  it('are nowhere where the clock never showed that time: 02:30 on 28 March has no 02:30 on the 29th', () =>
    expect(movedByDays(at('2026-03-28T01:30:00Z'), 1, berlin)).toBeNull());
  it('stand once where the hour came twice: 02:30 on 25 October has one 02:30 on the 26th', () => {
    expect(movedByDays(at('2026-10-25T00:30:00Z'), 1, berlin)).toBe(at('2026-10-26T01:30:00Z'));
    expect(movedByDays(at('2026-10-25T01:30:00Z'), 1, berlin)).toBeNull();
  });
  it('fall on the first time round of an hour that comes twice', () => expect(movedByDays(at('2026-10-24T00:30:00Z'), 1, berlin)).toBe(at('2026-10-25T00:30:00Z')));
  it('rise with what they are moved from, over both changes', () => {
    for (const start of ['2026-03-27T00:00:00Z', '2026-10-23T00:00:00Z']) {
      let last = 0;
      for (let t = at(start), end = t + 4 * 86_400_000; t < end; t += 60_000) {
        const moved = movedByDays(t, 1, berlin);
        if (moved === null) continue;
        expect(moved).toBeGreaterThan(last);
        last = moved;
      }
    }
  });
  it('always are somewhere for the end of a window', () => expect(edgeMovedByDays(at('2026-03-28T01:30:00Z'), 1, berlin)).toBe(at('2026-03-29T00:30:00Z')));
  it('are plain where a zone never changes, and where its offset has a half hour', () => {
    expect(movedByDays(at('2026-03-29T10:00:00Z'), -1, offsetsOf('UTC'))).toBe(at('2026-03-28T10:00:00Z'));
    expect(offsetsOf('Asia/Kolkata')(at('2026-03-29T10:00:00Z'))).toBe(5.5 * 3_600_000);
    expect(movedByDays(at('2026-10-04T10:00:00Z'), -1, offsetsOf('Australia/Lord_Howe'))).toBe(at('2026-10-03T10:30:00Z'));
  });
});
