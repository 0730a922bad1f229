import { describe, expect, it } from 'vitest';
import { valueRange } from './range';

const shown = { from: 0, to: 100, follow: false };
const limit = { measurand: 'ph' as const, low: 7.2, high: 7.6, source: '' };
const mark = (value: number) => ({ id: 'm', t: 50, value, u: 0.05, bound: 'none' as const, doubted: false, who: 'R' });

describe('the value axis of a strip', () => {
  it('holds the line, its tests and the limits near it', () => {
    const [a, b] = valueRange(7.5, 7.55, [mark(7.38)], shown, limit);
    expect(a).toBeLessThan(7.2);
    expect(b).toBeGreaterThan(7.6);
  });
  it('is not pressed flat by a test that lies far away', () => expect(valueRange(7.5, 7.55, [mark(9.99)], shown, limit)[1]).toBeLessThan(8.5));
  it('shows a test where there is no line', () => expect(valueRange(null, null, [mark(9.99)], shown, limit)[1]).toBeGreaterThan(9.99));
  it('shows the limits where there is nothing', () => expect(valueRange(null, null, [], shown, limit)[0]).toBeLessThan(7.2));
});
