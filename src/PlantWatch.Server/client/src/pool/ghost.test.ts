import { describe, expect, it } from 'vitest';
import { offsetsOf } from '../format/offset';
import type { Columns } from './columns';
import { ghostAt, ghostOf, ghostRange } from './ghost';

const berlin = offsetsOf('Europe/Berlin');
const columns = (t: number[], raw: (number | null)[], corrected: (number | null)[] = raw.map(() => null)): Columns => [t, raw.map(() => null), raw.map(() => null), raw, corrected];
const hour = 3_600_000, at = (iso: string) => Date.parse(iso);

describe('the line of another day', () => {
  it('stands at the same time of the clock and is the corrected one where there is one', () => {
    const t = at('2026-05-04T10:00:00Z');
    expect(ghostOf(columns([t, t + hour], [7.2, 7.3], [7.1, null]), 1, berlin)).toEqual({ t: [t + 24 * hour, t + 25 * hour], v: [7.1, 7.3] });
  });
  it('leaves the hour out that today never had, and is not torn for it', () => {
    const t = at('2026-03-28T00:00:00Z');
    // 01:00, 02:00, 03:00 of the clock; on the 29th there is no 02:00.
    expect(ghostOf(columns([t, t + hour, t + 2 * hour], [1, 2, 3]), 1, berlin)).toEqual({ t: [at('2026-03-29T00:00:00Z'), at('2026-03-29T01:00:00Z')], v: [1, 3] });
  });
  it('has the hour once that yesterday had twice', () => {
    const t = at('2026-10-25T00:00:00Z');
    expect(ghostOf(columns([t, t + hour, t + 2 * hour], [1, 2, 3]), 1, berlin).v).toEqual([1, 3]);
  });
  it('says nothing in a gap, nothing far from it, and tells the nearer of two', () => {
    const g = { t: [0, 10, 20], v: [1, null, 3] };
    expect([ghostAt(g, 4, 9), ghostAt(g, 9, 9), ghostAt(g, 16, 9), ghostAt(g, 40, 9), ghostAt(null, 0, 9)]).toEqual([1, null, 3, null, null]);
  });
  it('has a least and a most in the window alone', () => {
    expect(ghostRange({ t: [0, 10, 20], v: [1, 5, 9] }, 5, 15)).toEqual([5, 5]);
    expect(ghostRange({ t: [0], v: [null] }, 0, 1)).toBeNull();
  });
});
