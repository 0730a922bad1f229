import { useEffect, useRef } from 'preact/hooks';
import uPlot from 'uplot';
import type { CurveView } from '../contract.whatIf';
import { fixed } from '../format/number';
import { paint } from '../parts/theme';
import { readInk, type Ink } from '../pool/ink';
import type { CurveColumn } from './curvePoints';

interface Band { low: number | null; high: number | null }
export interface PlotKind { column: CurveColumn; band: Band | undefined; span: Band | undefined; axis: boolean; dose: boolean }
interface Spot { x: number; y: number | null }
interface Spots { then: Spot | null; now: Spot | null }

/** One curve: the imagined water drawn through, the present one broken, with a mark where each stands. */
export function CurvePlot({ width, kind, curve, before, then, now }: { width: number; kind: PlotKind; curve: CurveView; before: CurveView | null; then: Spot | null; now: Spot | null }) {
  const host = useRef<HTMLDivElement>(null);
  const chart = useRef<uPlot | null>(null);
  const spots = useRef<Spots>({ then, now });
  spots.current = { then: scaled(kind.column, then), now: scaled(kind.column, now) };
  const band = `${kind.band?.low}/${kind.band?.high}/${kind.span?.low}/${kind.span?.high}`;
  useEffect(() => {
    if (!host.current) return;
    const u = make(width, kind, readInk(host.current), () => spots.current, columnsOf(kind.column, curve, before), host.current);
    chart.current = u;
    return () => { chart.current = null; u.destroy(); };
  }, [width, kind.column, kind.axis, kind.dose, band, paint.value]);
  useEffect(() => { chart.current?.setData(columnsOf(kind.column, curve, before)); });
  return <div ref={host} class="curve-plot" aria-hidden="true" />;
}

/** A share is drawn in per cent. */
const scaled = (column: CurveColumn, at: Spot | null): Spot | null => at && { x: at.x, y: at.y === null ? null : at.y * (column === 'share' ? 100 : 1) };

function columnsOf(column: CurveColumn, curve: CurveView, before: CurveView | null): uPlot.AlignedData {
  const factor = column === 'share' ? 100 : 1;
  const y = (c: CurveView) => c[column].map(v => (v === null ? null : v * factor));
  return uPlot.join([[curve.at, y(curve)], before ? [before.at, y(before)] : [[], []]] as uPlot.AlignedData[]);
}

function make(width: number, kind: PlotKind, ink: Ink, spots: () => Spots, data: uPlot.AlignedData, host: HTMLElement): uPlot {
  const font = `12px ${getComputedStyle(document.body).fontFamily}`;
  const axis = { stroke: ink.soft, font, grid: { stroke: ink.rule, width: 1 }, ticks: { show: false } };
  return new uPlot({
    pxAlign: 0, width, height: 150 + (kind.axis ? 26 : 0), legend: { show: false }, padding: [8, 16, kind.axis ? 0 : 8, 0], cursor: { show: false },
    scales: { x: { time: false }, y: { range: (_, low, high) => rangeOf(kind.column, low, high) } },
    axes: [
      { ...axis, size: kind.axis ? 26 : 0, space: 50, values: (_, splits) => kind.axis ? splits.map(v => label(v, splits)) : splits.map(() => '') },
      { ...axis, size: 46, space: 28, values: (_, splits) => splits.map(v => label(v, splits)) },
    ],
    series: [{}, { stroke: ink.line, width: 2, points: { show: false } }, { stroke: ink.soft, width: 1.5, dash: [5, 4], points: { show: false } }],
    hooks: {
      drawClear: [u => { shade(u, 'x', kind.span, ink); shade(u, 'y', kind.band, ink); }],
      draw: [u => { spot(u, spots().now, ink, false); spot(u, spots().then, ink, true); }],
    },
  }, data, host);
}

function label(value: number, splits: number[]): string {
  const step = splits.length > 1 ? Math.abs(splits[1]! - splits[0]!) : 1;
  return fixed(value, step >= 1 ? 0 : Math.min(3, Math.ceil(-Math.log10(step) - 1e-9)));
}

/** What the eye needs beside the curve itself: zero and the band of the index, nil of an amount. */
function rangeOf(column: CurveColumn, low: number | null, high: number | null): [number, number] {
  if (low === null || high === null) return [0, 1];
  if (column === 'saturation') return [Math.min(low, -0.7), Math.max(high, 0.7)];
  if (column === 'ph') return [Math.min(low, 7) - 0.1, Math.max(high, 7.8) + 0.1];
  return column === 'share' ? [0, high > 20 ? 100 : Math.max(2, high * 1.08)] : [0, Math.max(high * 1.08, 0.01)];
}

function shade(u: uPlot, scale: 'x' | 'y', band: Band | undefined, ink: Ink): void {
  if (!band) return;
  const { ctx, bbox } = u;
  const from = scale === 'x' ? bbox.left : bbox.top, to = from + (scale === 'x' ? bbox.width : bbox.height);
  const place = (v: number | null, otherwise: number) => v === null ? otherwise : Math.min(to, Math.max(from, u.valToPos(v, scale, true)));
  const a = place(scale === 'x' ? band.low : band.high, from), b = place(scale === 'x' ? band.high : band.low, to);
  ctx.save();
  ctx.fillStyle = ink.band;
  if (scale === 'x') ctx.fillRect(a, bbox.top, b - a, bbox.height); else ctx.fillRect(bbox.left, a, bbox.width, b - a);
  ctx.restore();
}

function spot(u: uPlot, at: Spot | null, ink: Ink, filled: boolean): void {
  if (!at || at.y === null) return;
  const { ctx, bbox } = u;
  const x = u.valToPos(at.x, 'x', true), y = u.valToPos(at.y, 'y', true), r = 6 * devicePixelRatio;
  if (x < bbox.left - 1 || x > bbox.left + bbox.width + 1) return;
  ctx.save();
  ctx.lineWidth = 2 * devicePixelRatio;
  // The broken line of the present water leaves its dashes behind.
  ctx.setLineDash([]);
  ctx.beginPath();
  if (filled) { ctx.moveTo(x, y - r); ctx.lineTo(x + r, y); ctx.lineTo(x, y + r); ctx.lineTo(x - r, y); ctx.closePath(); } else ctx.arc(x, y, r * 0.8, 0, 7);
  ctx.fillStyle = filled ? ink.test : ink.sheet;
  ctx.strokeStyle = filled ? ink.sheet : ink.test;
  ctx.fill(); ctx.stroke();
  ctx.restore();
}
