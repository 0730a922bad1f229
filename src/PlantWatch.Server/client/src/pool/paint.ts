import type uPlot from 'uplot';
import type { LimitBand } from '../contract';
import type { Ink } from './ink';
import type { Happening, Mark } from './marks';
import type { Ghost } from './ghost';
import type { NoteSpan } from './notes';
import type { Shade } from './shades';

/** The band between the limits, behind everything. */
export function paintBand(u: uPlot, limit: LimitBand | undefined, ink: Ink): void {
  if (!limit) return;
  const { ctx, bbox } = u;
  const y = (v: number) => Math.round(u.valToPos(v, 'y', true));
  const top = Math.max(bbox.top, limit.high === null ? bbox.top : y(limit.high));
  const bottom = Math.min(bbox.top + bbox.height, limit.low === null ? bbox.top + bbox.height : y(limit.low));
  if (bottom <= top) return;
  ctx.save();
  ctx.fillStyle = ink.band;
  ctx.fillRect(bbox.left, top, bbox.width, bottom - top);
  ctx.restore();
}

/** A line at each limit that is set; over the grid, which would hide it where the two fall together. */
export function paintLimits(u: uPlot, limit: LimitBand | undefined, ink: Ink): void {
  if (!limit) return;
  const { ctx, bbox } = u;
  ctx.save();
  ctx.strokeStyle = ink.bandEdge;
  ctx.lineWidth = devicePixelRatio;
  ctx.setLineDash([6 * devicePixelRatio, 3 * devicePixelRatio]);
  for (const end of [limit.low, limit.high]) {
    if (end === null) continue;
    const at = Math.round(u.valToPos(end, 'y', true)) + 0.5;
    if (at < bbox.top || at > bbox.top + bbox.height) continue;
    ctx.beginPath(); ctx.moveTo(bbox.left, at); ctx.lineTo(bbox.left + bbox.width, at); ctx.stroke();
  }
  ctx.restore();
}

/** Times without flow, hatched: what the probe read then was standing water. The fewer of the time, the lower the hatching. */
export function paintShades(u: uPlot, shades: Shade[], ink: Ink): void {
  const { ctx, bbox } = u;
  const step = 7 * devicePixelRatio;
  for (const s of shades) {
    const a = Math.max(bbox.left, u.valToPos(s.from, 'x', true)), b = Math.min(bbox.left + bbox.width, Math.max(u.valToPos(s.to, 'x', true), u.valToPos(s.from, 'x', true) + 2 * devicePixelRatio));
    if (b <= a) continue;
    const height = bbox.height * Math.max(0.12, s.share), top = bbox.top + bbox.height - height;
    ctx.save();
    ctx.beginPath(); ctx.rect(a, top, b - a, height); ctx.clip();
    ctx.globalAlpha = 0.14; ctx.fillStyle = ink.soft; ctx.fillRect(a, top, b - a, height);
    ctx.globalAlpha = 0.5; ctx.strokeStyle = ink.soft; ctx.lineWidth = devicePixelRatio;
    // From a fixed corner of the plot, so that spans side by side are hatched as one.
    const first = bbox.left + Math.floor((a - bbox.left - height) / step) * step;
    for (let x = first; x < b; x += step) line(ctx, x, top + height, x + height, top);
    ctx.restore();
  }
}

/** The line of another day, thin and dotted under everything that is measured. */
export function paintGhost(u: uPlot, ghost: Ghost | null, ink: Ink): void {
  if (!ghost) return;
  const { ctx, bbox } = u;
  ctx.save();
  ctx.beginPath(); ctx.rect(bbox.left, bbox.top, bbox.width, bbox.height); ctx.clip();
  ctx.strokeStyle = ink.soft; ctx.lineWidth = 1.25 * devicePixelRatio; ctx.globalAlpha = 0.8; ctx.setLineDash([1.5 * devicePixelRatio, 3 * devicePixelRatio]);
  ctx.beginPath();
  let pen = false;
  ghost.t.forEach((t, i) => {
    const v = ghost.v[i];
    if (v == null) { pen = false; return; }
    const x = u.valToPos(t, 'x', true), y = u.valToPos(v, 'y', true);
    if (pen) ctx.lineTo(x, y); else ctx.moveTo(x, y);
    pen = true;
  });
  ctx.stroke();
  ctx.restore();
}

/** The times that notes speak of: a thin wash with an edge on each side. */
export function paintNotes(u: uPlot, spans: readonly NoteSpan[], ink: Ink): void {
  const { ctx, bbox } = u;
  ctx.save();
  ctx.lineWidth = devicePixelRatio; ctx.setLineDash([2 * devicePixelRatio, 2 * devicePixelRatio]);
  for (const s of spans) {
    const a = u.valToPos(s.from, 'x', true), b = u.valToPos(s.to, 'x', true);
    const left = Math.max(bbox.left, a), right = Math.min(bbox.left + bbox.width, b);
    if (right < bbox.left || left > bbox.left + bbox.width) continue;
    ctx.globalAlpha = 0.07; ctx.fillStyle = ink.ink; ctx.fillRect(left, bbox.top, Math.max(0, right - left), bbox.height);
    ctx.globalAlpha = 0.7; ctx.strokeStyle = ink.soft;
    for (const x of [a, b]) if (x >= bbox.left && x <= bbox.left + bbox.width) line(ctx, Math.round(x) + 0.5, bbox.top, Math.round(x) + 0.5, bbox.top + bbox.height);
  }
  ctx.restore();
}

/** Work and calibrations: a line through the strip with a wedge at its top. */
export function paintHappenings(u: uPlot, happenings: Happening[], ink: Ink): void {
  const { ctx, bbox } = u;
  const k = devicePixelRatio;
  ctx.save();
  ctx.strokeStyle = ink.soft; ctx.fillStyle = ink.ink; ctx.lineWidth = k;
  for (const h of happenings) {
    const x = Math.round(u.valToPos(h.t, 'x', true)) + 0.5;
    if (x < bbox.left || x > bbox.left + bbox.width) continue;
    line(ctx, x, bbox.top, x, bbox.top + bbox.height);
    ctx.beginPath(); ctx.moveTo(x - 5 * k, bbox.top); ctx.lineTo(x + 5 * k, bbox.top); ctx.lineTo(x, bbox.top + 8 * k); ctx.closePath(); ctx.fill();
  }
  ctx.restore();
}

/** The tests on the line: a diamond with its uncertainty; hollow with a broken bar when doubted, an arrow when it is only a bound. */
export function paintMarks(u: uPlot, marks: Mark[], ink: Ink): void {
  const { ctx, bbox } = u;
  const k = devicePixelRatio, r = 5 * k;
  ctx.save();
  ctx.beginPath(); ctx.rect(bbox.left, bbox.top, bbox.width, bbox.height); ctx.clip();
  ctx.lineWidth = 1.5 * k;
  for (const m of marks) {
    const x = u.valToPos(m.t, 'x', true), y = u.valToPos(m.value, 'y', true);
    if (x < bbox.left - r || x > bbox.left + bbox.width + r) continue;
    if (y < bbox.top || y > bbox.top + bbox.height) { edge(ctx, x, y < bbox.top ? bbox.top : bbox.top + bbox.height, y < bbox.top ? 1 : -1, r, ink); continue; }
    ctx.strokeStyle = ink.test;
    if (m.u > 0) {
      const a = u.valToPos(m.value + m.u, 'y', true), b = u.valToPos(m.value - m.u, 'y', true);
      ctx.setLineDash(m.doubted ? [3 * k, 3 * k] : []);
      line(ctx, x, a, x, b);
      ctx.setLineDash([]);
      line(ctx, x - r * 0.7, a, x + r * 0.7, a); line(ctx, x - r * 0.7, b, x + r * 0.7, b);
    }
    if (m.bound !== 'none') {
      const end = y + (m.bound === 'below' ? 1 : -1) * 4 * r;
      line(ctx, x, y, x, end); line(ctx, x, end, x - r * 0.7, end - Math.sign(end - y) * r); line(ctx, x, end, x + r * 0.7, end - Math.sign(end - y) * r);
    }
    ctx.beginPath(); ctx.moveTo(x, y - r); ctx.lineTo(x + r, y); ctx.lineTo(x, y + r); ctx.lineTo(x - r, y); ctx.closePath();
    ctx.fillStyle = m.doubted ? ink.sheet : ink.test;
    ctx.fill();
    ctx.strokeStyle = m.doubted ? ink.attention : ink.sheet;
    ctx.stroke();
  }
  ctx.restore();
}

/** A test beyond the edge: an arrow towards where it lies. */
function edge(ctx: CanvasRenderingContext2D, x: number, y: number, down: number, r: number, ink: Ink): void {
  ctx.beginPath(); ctx.moveTo(x, y + down); ctx.lineTo(x + r, y + down * 1.6 * r); ctx.lineTo(x - r, y + down * 1.6 * r); ctx.closePath();
  ctx.fillStyle = ink.sheet; ctx.strokeStyle = ink.test;
  ctx.fill(); ctx.stroke();
}

function line(ctx: CanvasRenderingContext2D, x1: number, y1: number, x2: number, y2: number): void {
  ctx.beginPath(); ctx.moveTo(x1, y1); ctx.lineTo(x2, y2); ctx.stroke();
}
