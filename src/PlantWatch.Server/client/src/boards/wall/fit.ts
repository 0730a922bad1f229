/** From where to where, in pixels from the beginning of the flow. */
export interface Span { top: number; bottom: number }

/** A tile in the flow, with what must not be cut in it: a card, a strip, a line with its heading; from above to below, none over another. */
export interface Box extends Span { parts: Span[] }

/** One screenful: how far the flow is moved up, how much smaller it is drawn, which tiles are seen, and what of each. */
export interface Screenful { from: number; scale: number; shown: number[]; seen: Record<number, Span> }

/** So much smaller a row may be drawn to fit: what is readable from five metres stays readable from four and a quarter. */
const least = 0.85;

/** A part that is taller than the screen is drawn as much smaller as it needs, down to this: half a figure misleads more than a small one. */
const leastOfPart = 0.5;

/** How much of a part that is taller than even that is seen again on the next screenful. */
const again = 0.1;

interface Row extends Span { tiles: number[] }

function rowsOf(boxes: Box[]): Row[] {
  const rows: Row[] = [];
  boxes.forEach(({ top, bottom }, i) => {
    const last = rows.at(-1);
    if (last && top < last.bottom - 1) { last.bottom = Math.max(last.bottom, bottom); last.tiles.push(i); }
    else rows.push({ top, bottom, tiles: [i] });
  });
  return rows;
}

/** Parts of a tile that stand beside each other are one: they are cut from the rest together. The first begins with the tile, and the last ends with as much of a margin: a tile may be stretched far beyond what it holds. */
export function partsOf({ top, bottom, parts }: Box): Span[] {
  const out: Span[] = [];
  for (const p of parts) {
    const last = out.at(-1);
    if (last && p.top < last.bottom - 1) last.bottom = Math.max(last.bottom, p.bottom);
    else out.push({ top: p.top, bottom: p.bottom });
  }
  if (out.length === 0) return [{ top, bottom }];
  const margin = Math.max(0, out[0]!.top - top), end = out.at(-1)!;
  out[0]!.top = top;
  end.bottom = Math.min(Math.max(bottom, end.bottom), end.bottom + margin);
  return out;
}

/** A part that is too tall even at its smallest, in steps that overlap; any other as it is. */
function slices(part: Span, most: number): Span[] {
  if (part.bottom - part.top <= most + 1) return [part];
  const out: Span[] = [];
  for (let top = part.top; ; top += most * (1 - again)) {
    const last = top + most >= part.bottom;
    out.push({ top: last ? part.bottom - most : top, bottom: last ? part.bottom : top + most });
    if (last) return out;
  }
}

/** A row that is taller than the screen: a little smaller, else by whole parts, each tile going on with the first that it has not shown. */
function inSteps(row: Row, boxes: Box[], room: number): Screenful[] {
  const scale = room / (row.bottom - row.top);
  if (scale >= least) return [{ from: row.top, scale, shown: row.tiles, seen: {} }];
  const left = row.tiles.map(tile => ({ tile, parts: partsOf(boxes[tile]!).flatMap(p => slices(p, room / leastOfPart)) })), out: Screenful[] = [];
  for (let from = row.top; from !== Infinity; from = Math.min(...left.flatMap(l => l.parts).map(p => p.top))) {
    // What begins here is whole on this page: its height says how much smaller the page is drawn.
    const tallest = Math.max(...left.flatMap(l => l.parts).filter(p => p.top <= from + 1).map(p => p.bottom - from));
    const drawn = Math.min(1, room / tallest), end = from + room / drawn, seen: Record<number, Span> = {};
    for (const l of left) {
      const here = l.parts.filter(p => p.top >= from && p.bottom <= end + 1);
      if (here.length > 0) seen[l.tile] = { top: here[0]!.top, bottom: here.at(-1)!.bottom };
      l.parts = l.parts.filter(p => !here.includes(p));
    }
    out.push({ from, scale: drawn, shown: Object.keys(seen).map(Number), seen });
  }
  return out;
}

/** Whole rows together while they fit; what is taller than the screen by whole parts. Nothing is cut by an edge that could be whole. */
export function screenfuls(boxes: Box[], room: number): Screenful[] {
  const out: Screenful[] = [];
  let open: Row | null = null;
  const close = () => { if (open) out.push({ from: open.top, scale: 1, shown: open.tiles, seen: {} }); open = null; };
  for (const row of room > 0 ? rowsOf(boxes) : []) {
    if (row.bottom - row.top > room + 1) { close(); out.push(...inSteps(row, boxes, room)); continue; }
    if (open && row.bottom - (open as Row).top > room + 1) close();
    open = open ? { top: (open as Row).top, bottom: row.bottom, tiles: [...(open as Row).tiles, ...row.tiles] } : row;
  }
  close();
  return out;
}
