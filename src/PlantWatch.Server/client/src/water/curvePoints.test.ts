import { describe, expect, it } from 'vitest';
import { has, placesOf, valueAt } from './curvePoints';

const curve = { at: [7, 7.5, 8], ph: [7, 7.5, 8], saturation: [-1, 0, null], hocl: [null, null, null], share: [0.8, 0.5, 0.25] };

describe('a curve in figures', () => {
  it('is read at its points and between them', () => {
    expect(valueAt(curve, 'share', 7.5)).toBe(0.5);
    expect(valueAt(curve, 'share', 7.25)).toBeCloseTo(0.65, 9);
  });
  it('says nothing beyond its ends and where it has no value', () => {
    expect(valueAt(curve, 'share', 8.4)).toBeNull();
    expect(valueAt(curve, 'saturation', 7.75)).toBeNull();
    expect(has(curve, 'hocl')).toBe(false);
  });
  it('is shown at round pH, or at quarters of a dose', () => {
    expect(placesOf(curve, false)).toEqual([7.2, 7.6, 8]);
    expect(placesOf({ ...curve, at: [0, 2, 4] }, true)).toEqual([0, 1, 2, 3, 4]);
    expect(placesOf({ ...curve, at: [] }, true)).toEqual([]);
  });
});
