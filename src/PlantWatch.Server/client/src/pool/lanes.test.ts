import { describe, expect, it } from 'vitest';
import { gathered, inRows, xOf } from './lanes';

describe('the marks over the strips', () => {
  it('stand where the strips draw their time', () => expect([xOf(0, 0, 100, 1062), xOf(50, 0, 100, 1062), xOf(100, 0, 100, 1062)]).toEqual([54, 554, 1054]));
  it('are gathered where they lie closer than a finger', () =>
    expect(gathered([{ x: 10, item: 'a' }, { x: 20, item: 'b' }, { x: 60, item: 'c' }], 28)).toEqual([{ x: 15, items: ['a', 'b'] }, { x: 60, items: ['c'] }]));
  it('keep their room from each other however many there are', () => {
    const found = gathered(Array.from({ length: 500 }, (_, i) => ({ x: i * 1.7, item: i })), 28);
    expect(found.flatMap(c => c.items)).toHaveLength(500);
    for (let i = 1; i < found.length; i++) expect(found[i]!.x - found[i - 1]!.x).toBeGreaterThanOrEqual(24);
  });
  it('put notes side by side into rows, and tell which find no room', () =>
    expect(inRows([{ left: 0, right: 50 }, { left: 20, right: 80 }, { left: 30, right: 40 }, { left: 60, right: 90 }], 2)).toEqual([0, 1, null, 0]));
});
