import { afterEach, describe, expect, it } from 'vitest';
import { asSi, asTyped, beside, typedUnit, siteUnits } from './units';

afterEach(() => { siteUnits.value = 'metric'; });

describe('units of the site', () => {
  it('take and show degrees Fahrenheit where people use them, and send Celsius', () => {
    siteUnits.value = 'us';
    expect(typedUnit('temperature')).toBe('\u00b0F');
    expect(asSi('temperature', 86)).toBe(30);
    expect(asTyped('temperature', 30)).toBe(86);
    expect(beside('temperature', 28)).toBe('82.4\u00a0\u00b0F');
  });
  it('come back as they were typed', () => {
    siteUnits.value = 'imperial';
    for (let f = 32; f <= 120; f += 0.1) expect(asTyped('temperature', asSi('temperature', f))).toBeCloseTo(f, 2);
  });
  it('change nothing else, and nothing in a metric plant', () => {
    expect(asSi('temperature', 28)).toBe(28);
    expect(beside('temperature', 28)).toBe('');
    siteUnits.value = 'us';
    expect(asSi('free_chlorine', 1.5)).toBe(1.5);
    expect(beside('free_chlorine', 1.5)).toBe('');
    expect(typedUnit('free_chlorine')).toBe('mg/L');
  });
});
