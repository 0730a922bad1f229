import { query } from '../api/http';

/** What a sheet is asked with; days are those of the site, such as 2026-03-01. */
export interface Asked { kind: string; pools: string[]; from: string; to: string; by: string }

/** The last day of a month such as 2026-03. */
export function lastOf(month: string): string {
  const [year, number] = month.split('-').map(Number) as [number, number];
  return `${month}-${String(new Date(Date.UTC(year, number, 0)).getUTCDate()).padStart(2, '0')}`;
}

/** The days of a month as it was typed, such as 2026-03; null when that names none. */
export const daysOf = (month: string): { from: string; to: string } | null => (/^\d{4}-(0[1-9]|1[0-2])$/.test(month.trim()) ? { from: `${month.trim()}-01`, to: lastOf(month.trim()) } : null);

/** What is missing, by field; nothing when it can be asked. */
export function missing(asked: Asked, w: { needName: string; needPool: string; needDay: string; order: string }): Record<string, string> {
  const wrong: Record<string, string> = {};
  if (asked.pools.length === 0) wrong['pools'] = w.needPool;
  if (!asked.from) wrong['from'] = w.needDay;
  if (asked.to && asked.from && asked.to < asked.from) wrong['to'] = w.order;
  if (!asked.by.trim()) wrong['by'] = w.needName;
  return wrong;
}

/** Where the sheet is. */
export const address = (asked: Asked, ending: string): string =>
  `/api/v1/sheets/${asked.kind}.${ending}` + query({ from: asked.from, to: asked.to || null, by: asked.by.trim() }) + asked.pools.map(p => '&pool=' + encodeURIComponent(p)).join('');
