import { describe, expect, it } from 'vitest';
import { partsOf, screenfuls, type Span } from './fit';

const at = (top: number, height: number, ...parts: [top: number, bottom: number][]) => ({ top, bottom: top + height, parts: parts.map(([t, b]) => ({ top: t, bottom: b })) });
const whole = (from: number, ...shown: number[]) => ({ from, scale: 1, shown, seen: {} });

describe('tiles on a wall', () => {
  it('are one screenful where they fit', () => {
    expect(screenfuls([at(0, 100), at(0, 80), at(112, 100)], 220)).toEqual([whole(0, 0, 1, 2)]);
  });

  it('go on by whole rows where they do not', () => {
    expect(screenfuls([at(0, 100), at(112, 100), at(112, 90), at(224, 50)], 215)).toEqual([whole(0, 0, 1, 2), whole(224, 3)]);
  });

  it('are drawn a little smaller where that is enough', () => {
    expect(screenfuls([at(0, 50), at(62, 110), at(184, 40)], 100)).toEqual([whole(0, 0), { from: 62, scale: 100 / 110, shown: [1], seen: {} }, whole(184, 2)]);
  });

  it('are none without room or without tiles', () => expect([screenfuls([at(0, 10)], 0), screenfuls([], 100)]).toEqual([[], []]));

  it('leave no tile out', () => {
    const boxes = Array.from({ length: 9 }, (_, i) => at(i * 70, 60 + (i % 4) * 40));
    expect([...new Set(screenfuls(boxes, 150).flatMap(s => s.shown))].sort()).toEqual(boxes.map((_, i) => i));
  });
});

describe('a tile that is taller than the screen', () => {
  // A heading with its first line, then lines of 40.
  const lines = at(0, 260, [5, 60], [70, 110], [120, 160], [170, 210], [215, 255]);

  it('goes on with the first part that did not fit whole', () => {
    expect(screenfuls([lines], 120)).toEqual([
      { from: 0, scale: 1, shown: [0], seen: { 0: { top: 0, bottom: 110 } } }, { from: 120, scale: 1, shown: [0], seen: { 0: { top: 120, bottom: 210 } } }, { from: 215, scale: 1, shown: [0], seen: { 0: { top: 215, bottom: 260 } } },
    ]);
  });

  it('shows beside it only what is whole there too, and what has been shown once needs no second turn', () => {
    const beside = at(0, 260, [5, 100]), other = at(0, 260, [5, 70], [80, 150]);
    const pages = screenfuls([lines, { ...beside, bottom: 105 }, { ...other, bottom: 155 }], 120);
    expect(pages.map(p => p.seen)).toEqual([
      { 0: { top: 0, bottom: 110 }, 1: { top: 0, bottom: 105 }, 2: { top: 0, bottom: 70 } }, { 2: { top: 80, bottom: 155 }, 0: { top: 120, bottom: 160 } }, { 0: { top: 170, bottom: 260 } },
    ]);
  });

  it('never cuts a part: one that is too tall is drawn smaller, down to a half', () => {
    expect(screenfuls([at(0, 230, [10, 40], [50, 210])], 100)).toEqual([
      { from: 0, scale: 1, shown: [0], seen: { 0: { top: 0, bottom: 40 } } }, { from: 50, scale: 100 / 170, shown: [0], seen: { 0: { top: 50, bottom: 220 } } },
    ]);
  });

  it('is shown in steps that overlap, to its very end, where a part is taller than even that', () => {
    const pages = screenfuls([at(0, 500)], 100);
    expect(pages.map(p => [p.from, p.scale, p.seen[0]])).toEqual([[0, 0.5, { top: 0, bottom: 200 }], [180, 0.5, { top: 180, bottom: 380 }], [300, 0.5, { top: 300, bottom: 500 }]]);
  });

  it('loses no part, whatever their heights, and cuts none', () => {
    for (let seed = 1; seed < 60; seed++) {
      const heights = Array.from({ length: 12 }, (_, i) => 20 + (seed * 37 + i * i * 11) % 75);
      let top = 0;
      const parts: [number, number][] = heights.map(h => { const p: [number, number] = [top, top + h]; top += h + 5; return p; });
      const pages = screenfuls([at(0, top, ...parts)], 100);
      const shows = (s: Span) => pages.some(p => p.seen[0]!.top <= s.top && p.seen[0]!.bottom >= s.bottom && p.from <= s.top + 1 && p.from + 100 / p.scale >= s.bottom - 1);
      expect(parts.every(([t, b]) => shows({ top: t, bottom: b }))).toBe(true);
      expect(pages.every(p => parts.every(([t, b]) => b <= p.seen[0]!.top || t >= p.seen[0]!.bottom || (t >= p.seen[0]!.top && b <= p.seen[0]!.bottom)))).toBe(true);
    }
  });
});

describe('parts of a tile', () => {
  it('that stand beside each other are one, and the outer ones take its margin with them, but not what it was stretched by', () => {
    expect(partsOf(at(0, 300, [10, 50], [10, 60], [70, 190]))).toEqual([{ top: 0, bottom: 60 }, { top: 70, bottom: 200 }]);
    expect(partsOf(at(0, 200))).toEqual([{ top: 0, bottom: 200 }]);
  });
});
