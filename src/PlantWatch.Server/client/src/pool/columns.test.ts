import { describe, expect, it } from 'vitest';
import { append, columnsOf, noColumns } from './columns';

const at = (t: number, r: number, v = r) => ({ s: 'p', t, r, v, g: true });

describe('the columns of a strip', () => {
  it('show the envelope only where a tier has one', () => {
    const view = { series: 'p', tier: 'raw' as const, t: [1, 2], min: [7, 7], mean: [7, 7], max: [7, 7], corrected: null };
    expect(columnsOf(view)[1]).toEqual([null, null]);
    expect(columnsOf({ ...view, tier: 'minute' })[1]).toEqual([7, 7]);
  });
  it('take a live reading once', () => {
    const c = noColumns();
    expect(append(c, at(1_000, 7.4), false, 10)).toBe(true);
    expect(append(c, at(1_000, 7.4), false, 10)).toBe(false);
    expect(c[0]).toEqual([1_000]);
  });
  it('break the line after a silence', () => {
    const c = noColumns();
    append(c, at(1_000, 7.4), false, 10);
    append(c, at(32_000, 7.5, 7.6), false, 10);
    expect(c[3]).toEqual([7.4, null, 7.5]);
    expect(c[4]).toEqual([null, null, 7.6]);
  });
});
