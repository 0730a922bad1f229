import type { LimitBand } from '../contract';
import type { Mark } from './marks';
import type { Shown } from './window';

/** The ends of the value axis: what is in sight, the tests on it, and the limits that are near. */
export function valueRange(low: number | null, high: number | null, marks: Mark[], shown: Shown, limit: LimitBand | undefined): [number, number] {
  const line = low !== null && high !== null ? [low, high] : null;
  // A test that lies far from the line must not press the line flat: it is drawn at the edge instead.
  const far = line ? Math.max(line[1]! - line[0]!, Math.abs(line[1]!) * 0.04, (limit?.high ?? 0) - (limit?.low ?? limit?.high ?? 0)) * 1.5 : Infinity;
  const near = (m: Mark) => !line || (m.value > line[0]! - far && m.value < line[1]! + far);
  const seen = marks.filter(m => m.t >= shown.from && m.t <= shown.to && near(m)).flatMap(m => [m.value - m.u, m.value + m.u]);
  if (line) seen.push(...line);
  if (seen.length === 0) for (const end of [limit?.low, limit?.high]) if (end != null) seen.push(end);
  if (seen.length === 0) return [0, 1];
  let a = Math.min(...seen), b = Math.max(...seen);
  const reach = Math.max(b - a, Math.abs(b) * 0.01, 0.02) * 2;
  if (limit?.low != null && limit.low < b + reach && limit.low > a - reach) { a = Math.min(a, limit.low); b = Math.max(b, limit.low); }
  if (limit?.high != null && limit.high < b + reach && limit.high > a - reach) { a = Math.min(a, limit.high); b = Math.max(b, limit.high); }
  const pad = b > a ? (b - a) * 0.1 : Math.max(Math.abs(b) * 0.2, 0.05);
  return [a - pad, b + pad];
}
