import type { Columns } from './columns';

/** Which lines are drawn where readings were corrected. */
export type Look = 'both' | 'corrected' | 'raw';
export const looks: Look[] = ['both', 'corrected', 'raw'];

export const isCorrected = (columns: Columns) => columns[4].some(v => v !== null);

/** The columns as they are looked at. The spread is that of what was received and goes with it. */
export function looked(columns: Columns, look: Look): Columns {
  if (look === 'both' || !isCorrected(columns)) return columns;
  const [t, min, max, raw, corrected] = columns, none = t.map(() => null);
  return look === 'raw' ? [t, min, max, raw, none] : [t, none, none, none, corrected];
}
