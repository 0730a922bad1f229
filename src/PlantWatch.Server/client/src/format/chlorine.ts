export type Combined = { kind: 'missing' } | { kind: 'value'; value: number } | { kind: 'free_above_total'; value: number };

/** Combined chlorine of one sample, mg/L as Cl2: total less free. Free above total is impossible in the water and so says that one test is wrong. */
export function combined(free: number | null, total: number | null): Combined {
  if (free === null || total === null) return { kind: 'missing' };
  // Photometers give hundredths; without rounding 1.2 - 1.1 would show as 0.0999.
  const value = Math.round((total - free) * 1000) / 1000;
  return value < 0 ? { kind: 'free_above_total', value } : { kind: 'value', value };
}
