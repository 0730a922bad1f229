import { describe, expect, it } from 'vitest';
import { screenfuls } from './fit';

const at = (top: number, height: number) => ({ top, bottom: top + height });

describe('tiles on a wall', () => {
  it('are one screenful where they fit', () => {
    expect(screenfuls([at(0, 100), at(0, 80), at(112, 100)], 220)).toEqual([{ from: 0, scale: 1, shown: [0, 1, 2] }]);
  });

  it('go on by whole rows where they do not', () => {
    expect(screenfuls([at(0, 100), at(112, 100), at(112, 90), at(224, 50)], 215)).toEqual([{ from: 0, scale: 1, shown: [0, 1, 2] }, { from: 224, scale: 1, shown: [3] }]);
  });

  it('are shown in steps that overlap where one is taller than the screen, to its very end', () => {
    expect(screenfuls([at(0, 50), at(62, 250), at(324, 40)], 100)).toEqual([
      { from: 0, scale: 1, shown: [0] }, { from: 62, scale: 1, shown: [1] }, { from: 152, scale: 1, shown: [1] }, { from: 212, scale: 1, shown: [1] }, { from: 324, scale: 1, shown: [2] },
    ]);
  });

  it('are drawn a little smaller where that is enough', () => {
    expect(screenfuls([at(0, 50), at(62, 110), at(184, 40)], 100)).toEqual([{ from: 0, scale: 1, shown: [0] }, { from: 62, scale: 100 / 110, shown: [1] }, { from: 184, scale: 1, shown: [2] }]);
  });

  it('are none without room or without tiles', () => expect([screenfuls([at(0, 10)], 0), screenfuls([], 100)]).toEqual([[], []]));

  it('leave no tile out', () => {
    const boxes = Array.from({ length: 9 }, (_, i) => at(i * 70, 60 + (i % 4) * 40));
    expect([...new Set(screenfuls(boxes, 150).flatMap(s => s.shown))].sort()).toEqual(boxes.map((_, i) => i));
  });
});
