/** Where the strips draw time: pixels of the value axis on the left, and the room on the right. */
export const plotLeft = 54, plotRight = 8;

/** Pixels from the left edge of the strips for a time; `step` is how much larger than usual the page is drawn. */
export const xOf = (t: number, from: number, to: number, width: number, step = 1) => step * plotLeft + (t - from) / (to - from) * (width - step * (plotLeft + plotRight));

/** What lies so near together that a finger could not tell it apart is one. */
export interface Cluster<T> { x: number; items: T[] }

/** Things at places in rising order, gathered so that each has its room; a gathering stands in the middle of what it holds. */
export function gathered<T>(items: readonly { x: number; item: T }[], room: number): Cluster<T>[] {
  const out: (Cluster<T> & { first: number; last: number })[] = [];
  for (const { x, item } of items) {
    const near = out.at(-1);
    if (near && x - (near.first + near.last) / 2 < room) { near.items.push(item); near.last = x; near.x = (near.first + x) / 2; }
    else out.push({ x, first: x, last: x, items: [item] });
  }
  return out.map(({ x, items: held }) => ({ x, items: held }));
}

/** Bars in as few rows as keep them apart, each in the first row that has room. Null for what finds none in the rows there may be. */
export function inRows(bars: readonly { left: number; right: number }[], rows: number): (number | null)[] {
  const ends: number[] = Array.from({ length: rows }, () => -Infinity);
  return bars.map(b => {
    const row = ends.findIndex(end => end <= b.left);
    if (row < 0) return null;
    ends[row] = b.right + 2;
    return row;
  });
}
