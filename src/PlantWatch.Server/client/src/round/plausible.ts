import type { Measurand } from '../contract';

/** What is known beside a number that is being typed. */
export interface Beside {
  last: { value: number; at: number; suspect: boolean } | null;
  probe: { name: string; value: number; believed: number | null; u: number } | null;
}
export type Quiet = { kind: 'last' | 'far' | 'probe' | 'probe_far' };

// A hint and never a verdict: the server judges with what it knows (Core/Readings/CheckPlausibility, whose usual changes these are).
const usual: Partial<Record<Measurand, (last: number) => number>> = {
  ph: () => 0.6, temperature: () => 4, free_chlorine: l => Math.max(2, l), total_chlorine: l => Math.max(2, l), bromine: l => Math.max(4.5, l),
  total_alkalinity: l => Math.max(60, 0.4 * l), calcium_hardness: l => Math.max(100, 0.4 * l), cyanuric_acid: l => Math.max(30, 0.4 * l), dissolved_solids: l => Math.max(500, 0.4 * l),
};
// Where a test and a probe of one water part in a way that a person would see (our choice: twice what a photometer in good hands is off by).
const apart: Partial<Record<Measurand, number>> = { ph: 0.2, temperature: 1, free_chlorine: 0.3 };

const comparable = 48 * 3_600_000;

/** What to say quietly beside the number, in order. Nothing while nothing is typed: shown earlier it would only be copied. */
export function quietWords(m: Measurand, value: number | null, beside: Beside, now: number): Quiet[] {
  if (value === null) return [];
  const said: Quiet[] = [];
  if (beside.last) {
    const far = !beside.last.suspect && now - beside.last.at <= comparable && Math.abs(value - beside.last.value) > (usual[m]?.(beside.last.value) ?? Infinity);
    said.push({ kind: far ? 'far' : 'last' });
  }
  if (beside.probe) {
    const believed = beside.probe.believed ?? beside.probe.value, least = apart[m] ?? Infinity;
    said.push({ kind: Math.abs(value - believed) > Math.max(least, 2 * beside.probe.u) ? 'probe_far' : 'probe' });
  }
  return said;
}
