/** Where a tile stands in the flow, in pixels from its beginning. */
export interface Box { top: number; bottom: number }

/** One screenful: how far the flow is moved up, how much smaller it is drawn, and which tiles are seen. */
export interface Screenful { from: number; scale: number; shown: number[] }

/** How much of a tile that is taller than the screen is seen again on the next screenful. */
const again = 0.1;

/** So much smaller a row may be drawn to fit: what is readable from five metres stays readable from four and a quarter. */
const least = 0.85;

interface Row { top: number; bottom: number; tiles: number[] }

function rowsOf(boxes: Box[]): Row[] {
  const rows: Row[] = [];
  boxes.forEach((b, i) => {
    const last = rows.at(-1);
    if (last && b.top < last.bottom - 1) { last.bottom = Math.max(last.bottom, b.bottom); last.tiles.push(i); }
    else rows.push({ ...b, tiles: [i] });
  });
  return rows;
}

/** A row that is taller than the screen: a little smaller, or in steps that overlap. */
function slices(row: Row, room: number): Screenful[] {
  const scale = room / (row.bottom - row.top);
  if (scale >= least) return [{ from: row.top, scale, shown: row.tiles }];
  const step = room * (1 - again), out: Screenful[] = [];
  for (let from = row.top; ; from += step) {
    const last = from + room >= row.bottom;
    out.push({ from: last ? Math.max(row.top, row.bottom - room) : from, scale: 1, shown: row.tiles });
    if (last) return out;
  }
}

/** Whole rows together while they fit; what is taller than the screen in steps. Nothing is ever cut by an edge without being whole elsewhere. */
export function screenfuls(boxes: Box[], room: number): Screenful[] {
  const out: Screenful[] = [];
  let open: Row | null = null;
  const close = () => { if (open) out.push({ from: open.top, scale: 1, shown: open.tiles }); open = null; };
  for (const row of room > 0 ? rowsOf(boxes) : []) {
    if (row.bottom - row.top > room + 1) { close(); out.push(...slices(row, room)); continue; }
    if (open && row.bottom - (open as Row).top > room + 1) close();
    open = open ? { top: (open as Row).top, bottom: row.bottom, tiles: [...(open as Row).tiles, ...row.tiles] } : row;
  }
  close();
  return out;
}
