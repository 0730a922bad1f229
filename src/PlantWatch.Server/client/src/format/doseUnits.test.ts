import { describe, expect, it } from 'vitest';
import { doseUnits } from './doseUnits';

const size = (system: 'metric' | 'us' | 'imperial', name: string) => doseUnits(system, true).find(u => u.name === name)?.size;

describe('units of what went in', () => {
  it('begins with what the plant measures out in, and always knows SI', () => {
    expect(doseUnits('metric', true).map(u => u.name)).toEqual(['L', 'mL', 'kg', 'g']);
    expect(doseUnits('metric', false).map(u => u.name)).toEqual(['kg', 'g']);
    expect(doseUnits('us', false).map(u => u.name)).toEqual(['lb', 'oz', 'kg', 'g']);
    expect(doseUnits('imperial', true)[0]?.name).toBe('imp gal');
  });

  // Check values DOSE-20 to DOSE-23: 3.785411784 L, 4.54609 L, 29.5735295625 mL, 28.4130625 mL, 453.59237 g (definitions, from memory).
  it('keeps the two gallons and the two fluid ounces apart', () => {
    expect(size('us', 'US gal')).toBe(3.785411784);
    expect(size('imperial', 'imp gal')).toBe(4.54609);
    expect(size('us', 'US fl oz')! * 1000).toBeCloseTo(29.5735295625, 10);
    expect(size('imperial', 'imp fl oz')! * 1000).toBeCloseTo(28.4130625, 10);
    expect(size('us', 'lb')).toBe(0.45359237);
  });
});
