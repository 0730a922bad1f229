import { describe, expect, it } from 'vitest';
import { siteUnits } from '../format/units';
import { inputKinds, startOf, textOf, valueOf, waterOf } from './inputs';

const ph = inputKinds[0]!;
const input = (measurand: 'ph' | 'temperature', value: number) => ({ measurand, value, at: '', live: true, u: null, suspect: false, probeId: null });

describe('a water that is imagined', () => {
  const start = startOf([input('ph', 7.4321), input('temperature', 28)]);
  it('starts from the present figures, in full', () => {
    expect(textOf(ph, {}, start)).toBe('7.43');
    expect(waterOf({}, start)).toMatchObject({ ph: 7.4321, temperature: 28, totalAlkalinity: null });
  });
  it('takes what was typed, with a comma too', () => expect(waterOf({ ph: '7,2' }, start)?.ph).toBe(7.2));
  it('counts an emptied field as not known', () => expect(waterOf({ ph: '' }, start)?.ph).toBeNull());
  it('is none while a field holds no number', () => {
    expect(valueOf(ph, { ph: 'seven' }, start)).toBeUndefined();
    expect(waterOf({ ph: 'seven' }, start)).toBeNull();
  });
  it('is typed in degrees Fahrenheit where people use them, and travels in Celsius', () => {
    siteUnits.value = 'us';
    try {
      expect(textOf(inputKinds[1]!, {}, start)).toBe('82.4');
      expect(waterOf({ temperature: '86' }, start)?.temperature).toBe(30);
    } finally { siteUnits.value = 'metric'; }
  });
});
