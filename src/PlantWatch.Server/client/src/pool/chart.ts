import uPlot from 'uplot';
import type { LimitBand } from '../contract';
import { fixed } from '../format/number';
import type { Ink } from './ink';
import type { Happening, Mark } from './marks';
import { ghostRange, type Ghost } from './ghost';
import { plotLeft, plotRight } from './lanes';
import type { NoteSpan } from './notes';
import { paintBand, paintGhost, paintHappenings, paintLimits, paintMarks, paintNotes, paintShades } from './paint';
import type { Shade } from './shades';
import type { Columns } from './columns';
import { valueRange } from './range';
import { tickLabels } from './ticks';
import type { Shown } from './window';

export interface StripSetup {
  width: number; height: number; axis: boolean; zone: string; decimals: number; limit: LimitBand | undefined; stepped: boolean; ink: Ink;
  /** Asked at each painting, so that new tests need no new chart. */
  marks: () => Mark[];
  happenings: () => Happening[];
  shades: () => Shade[];
  ghost: () => Ghost | null;
  notes: () => readonly NoteSpan[];
  onCursor: (index: number | null, left: number) => void;
}

/** How much larger than usual everything is drawn: the size of the page's letters against 16 px. */
export const sizeStep = () => parseFloat(getComputedStyle(document.documentElement).fontSize) / 16 || 1;

export function makeChart(s: StripSetup, data: Columns, shown: Shown, host: HTMLElement): uPlot {
  const labels = tickLabels(s.zone);
  const step = sizeStep(), font = `${12 * step}px ${getComputedStyle(document.body).fontFamily}`;
  const axis = { stroke: s.ink.soft, font, grid: { stroke: s.ink.rule, width: 1 }, ticks: { show: false } };
  const paths = s.stepped ? uPlot.paths.stepped!({ align: 1 }) : undefined;
  const line = { spanGaps: false, points: { show: true, size: 3 * step, width: 0, filter: lonely }, ...(paths ? { paths } : {}) };
  return new uPlot({
    width: s.width, height: s.height, ms: 1, legend: { show: false }, padding: [8 * step, plotRight * step, s.axis ? 0 : 8 * step, 0],
    tzDate: t => uPlot.tzDate(new Date(t), s.zone),
    cursor: { drag: { x: false, y: false, setScale: false }, y: false, sync: { key: 'strips', scales: ['x', null] }, points: { size: 7 } },
    scales: {
      x: { time: true, auto: false, min: shown.from, max: shown.to },
      y: {
        range: (u, low, high) => {
          if (s.stepped) return [-0.15, 1.15];
          const from = u.scales['x']!.min!, to = u.scales['x']!.max!, other = ghostRange(s.ghost(), from, to);
          return valueRange(other ? Math.min(low ?? other[0], other[0]) : low, other ? Math.max(high ?? other[1], other[1]) : high, s.marks(), { from, to, follow: false }, s.limit);
        },
      },
    },
    axes: [
      // Without labels the axis still draws its lines, so that the eye can follow a time up through all strips.
      { ...axis, size: s.axis ? 28 * step : 0, space: 62 * step, values: (_, splits, __, ___, step) => s.axis ? labels(splits, step) : splits.map(() => '') },
      { ...axis, size: plotLeft * step, space: 28 * step, values: (_, splits) => s.stepped ? splits.map(v => (v === 0 || v === 1 ? String(v) : '')) : splits.map(v => fixed(v, decimalsFor(splits, s.decimals))) },
    ],
    series: [
      {},
      { ...line, stroke: 'transparent', width: 0 },
      { ...line, stroke: 'transparent', width: 0 },
      { ...line, points: { ...line.points, fill: s.ink.line }, stroke: s.ink.line, width: 1.5 * step },
      { ...line, points: { ...line.points, fill: s.ink.line2 }, stroke: s.ink.line2, width: 2 * step },
    ],
    bands: [{ series: [2, 1], fill: s.ink.envelope }],
    hooks: {
      drawClear: [u => { paintBand(u, s.limit, s.ink); paintNotes(u, s.notes(), s.ink); paintShades(u, s.shades(), s.ink); }],
      drawAxes: [u => { paintLimits(u, s.limit, s.ink); paintGhost(u, s.ghost(), s.ink); }],
      draw: [u => { paintHappenings(u, s.happenings(), s.ink); paintMarks(u, s.marks(), s.ink); }],
      setCursor: [u => s.onCursor(u.cursor.left != null && u.cursor.left >= 0 ? u.cursor.idx ?? null : null, u.cursor.left ?? -1)],
    },
  }, data as unknown as uPlot.AlignedData, host);
}

/** A reading between two gaps has no line to stand on; without a dot it would be hidden. */
function lonely(u: uPlot, series: number): number[] | null {
  if (series < 3) return [];
  const v = u.data[series]!;
  const found: number[] = [];
  for (let i = 0; i < v.length; i++) if (v[i] != null && v[i - 1] == null && v[i + 1] == null) found.push(i);
  return found;
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
