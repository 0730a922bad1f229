import uPlot from 'uplot';
import type { LimitPlan } from '../contract';
import { fixed } from '../format/number';
import type { Ink } from './ink';
import type { Mark } from './marks';
import { paintBand, paintMarks } from './paint';
import type { Columns } from './columns';
import { tickLabels } from './ticks';
import type { Shown } from './window';

export interface StripSetup {
  width: number; height: number; axis: boolean; zone: string; decimals: number; limit: LimitPlan | undefined; stepped: boolean; ink: Ink;
  /** Asked at each painting, so that new tests need no new chart. */
  marks: () => Mark[];
  onCursor: (index: number | null, left: number) => void;
}

/** The ends of the value axis: what is in sight, the tests on it, and the limits that are near. */
export function valueRange(low: number | null, high: number | null, marks: Mark[], shown: Shown, limit: LimitPlan | undefined): [number, number] {
  const seen = marks.filter(m => m.t >= shown.from && m.t <= shown.to).flatMap(m => [m.value - m.u, m.value + m.u]);
  if (low !== null && high !== null) seen.push(low, high);
  if (seen.length === 0) for (const end of [limit?.low, limit?.high]) if (end != null) seen.push(end);
  if (seen.length === 0) return [0, 1];
  let a = Math.min(...seen), b = Math.max(...seen);
  const reach = Math.max(b - a, Math.abs(b) * 0.01, 0.02) * 2;
  if (limit?.low != null && limit.low < b + reach && limit.low > a - reach) { a = Math.min(a, limit.low); b = Math.max(b, limit.low); }
  if (limit?.high != null && limit.high < b + reach && limit.high > a - reach) { a = Math.min(a, limit.high); b = Math.max(b, limit.high); }
  const pad = b > a ? (b - a) * 0.1 : Math.max(Math.abs(b) * 0.2, 0.05);
  return [a - pad, b + pad];
}

export function makeChart(s: StripSetup, data: Columns, shown: Shown, host: HTMLElement): uPlot {
  const labels = tickLabels(s.zone);
  const font = `12px ${getComputedStyle(document.body).fontFamily}`;
  const axis = { stroke: s.ink.soft, font, grid: { stroke: s.ink.rule, width: 1 }, ticks: { show: false } };
  const paths = s.stepped ? uPlot.paths.stepped!({ align: 1 }) : undefined;
  const line = { spanGaps: false, points: { show: false }, ...(paths ? { paths } : {}) };
  return new uPlot({
    width: s.width, height: s.height, ms: 1, legend: { show: false }, padding: [8, 8, s.axis ? 0 : 8, 0],
    tzDate: t => uPlot.tzDate(new Date(t), s.zone),
    cursor: { drag: { x: false, y: false, setScale: false }, y: false, sync: { key: 'strips', scales: ['x', null] }, points: { size: 7 } },
    scales: {
      x: { time: true, auto: false, min: shown.from, max: shown.to },
      y: { range: (u, low, high) => s.stepped ? [-0.15, 1.15] : valueRange(low, high, s.marks(), { from: u.scales['x']!.min!, to: u.scales['x']!.max!, follow: false }, s.limit) },
    },
    axes: [
      // Without labels the axis still draws its lines, so that the eye can follow a time up through all strips.
      { ...axis, size: s.axis ? 28 : 0, space: 62, values: (_, splits, __, ___, step) => s.axis ? labels(splits, step) : splits.map(() => '') },
      { ...axis, size: 54, space: 28, values: (_, splits) => s.stepped ? splits.map(v => (v === 0 || v === 1 ? String(v) : '')) : splits.map(v => fixed(v, decimalsFor(splits, s.decimals))) },
    ],
    series: [
      {},
      { ...line, stroke: 'transparent', width: 0 },
      { ...line, stroke: 'transparent', width: 0 },
      { ...line, stroke: s.ink.line, width: 1.5 },
      { ...line, stroke: s.ink.line2, width: 2 },
    ],
    bands: [{ series: [2, 1], fill: s.ink.envelope }],
    hooks: {
      drawClear: [u => paintBand(u, s.limit, s.ink)],
      draw: [u => paintMarks(u, s.marks(), s.ink)],
      setCursor: [u => s.onCursor(u.cursor.left != null && u.cursor.left >= 0 ? u.cursor.idx ?? null : null, u.cursor.left ?? -1)],
    },
  }, data as unknown as uPlot.AlignedData, host);
}

/** Fine steps need a decimal more than people write the measurand with. */
function decimalsFor(splits: number[], decimals: number): number {
  const step = splits.length > 1 ? Math.abs(splits[1]! - splits[0]!) : 1;
  return Math.min(4, Math.max(step >= 1 ? 0 : Math.ceil(-Math.log10(step) - 1e-9), decimals > 1 && step < 1 ? decimals : 0));
}

/** Puts data and window in. Beside a corrected line the raw one is drawn broken. */
export function feed(u: uPlot, data: Columns, shown: Shown): void {
  u.series[3]!.dash = data[4].some(v => v !== null) ? [3, 3] : [];
  u.batch(() => {
    u.setData(data as unknown as uPlot.AlignedData, false);
    u.setScale('x', { min: shown.from, max: shown.to });
  });
}
