import type { ClockView } from '../contract.incident';
import { clock as timeOf } from '../format/zone';
import { zone } from '../live/store';
import { fixed } from '../format/number';
import { words } from '../words';
import { plain } from './incident';

const [width, height, left, bottom, top] = [600, 160, 34, 26, 10];

/** The residual as it was tested, and the time that counts filled in: for a contact time the area is the very thing that is counted. */
export function HoldStrip({ clock }: { clock: ClockView }) {
  const tests = clock.tests.filter(t => t.residual !== null).map(t => ({ ...t, x: Date.parse(t.at), y: t.residual! }));
  if (tests.length < 2 || !clock.row) return null;
  const from = tests[0]!.x, end = Math.max(tests.at(-1)!.x, clock.earliestEnd ? Math.min(Date.parse(clock.earliestEnd), tests.at(-1)!.x + 2 * (tests.at(-1)!.x - from) + 600_000) : 0);
  const most = Math.max(clock.row.startAt, ...tests.map(t => t.y)) * 1.15;
  const x = (t: number) => left + ((t - from) / Math.max(1, end - from)) * (width - left - 8);
  const y = (v: number) => height - bottom - (v / most) * (height - bottom - top);
  const started = clock.startedAt ? Date.parse(clock.startedAt) : Infinity;
  let last: typeof tests[number] | null = null;
  const areas: string[] = [];
  for (const t of tests) {
    if (!t.counts) continue;
    if (last && t.gained > 0) {
      const x0 = Math.max(last.x, started), y0 = t.y < last.y ? last.y : Math.min(last.y, t.y), y1 = Math.min(y0, t.y);
      areas.push(`M${x(x0)},${y(0)} L${x(x0)},${y(y0)} L${x(t.x)},${y(y1)} L${x(t.x)},${y(0)} Z`);
    }
    last = t;
  }
  return (
    <figure class="hold-strip">
      <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={words.incident.stripSaid(tests.filter(t => t.counts).length, fixed(clock.share * 100, 0))}>
        {areas.map((d, i) => <path key={i} class="hold-area" d={d} />)}
        <line class="hold-floor" x1={left} x2={width - 8} y1={y(clock.row.floor)} y2={y(clock.row.floor)} />
        <line class="hold-axis" x1={left} x2={width - 8} y1={y(0)} y2={y(0)} />
        {last && clock.earliestEnd && <line class="hold-ahead" x1={x(last.x)} x2={x(end)} y1={y(last.y)} y2={y(last.y)} />}
        {tests.map(t => <path key={t.checkId} class={t.counts ? 'hold-test' : 'hold-test open'} d={`M${x(t.x)},${y(t.y) - 6} l6,6 l-6,6 l-6,-6 Z`} />)}
        {[clock.row.floor, Math.max(...tests.map(t => t.y))].filter((v, i, all) => i === 0 || Math.abs(y(v) - y(all[0]!)) > 14).map(v => <text key={v} class="hold-text" x={left - 5} y={y(v) + 4} text-anchor="end">{plain(v, 1)}</text>)}
        <text class="hold-text" x={left} y={height - 4}>{timeOf(from, zone.value)}</text>
        <text class="hold-text" x={width - 8} y={height - 4} text-anchor="end">{timeOf(end, zone.value)}</text>
      </svg>
      <figcaption class="hint">{words.incident.strip} (mg/L): {words.incident.stripKey}</figcaption>
    </figure>
  );
}
