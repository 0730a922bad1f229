import type { LimitQuantity, WhatIfLimit } from '../contract.whatIfLimits';
import { plain, readTyped } from '../format/number';
import { words } from '../words';

export const figures = ['low', 'high', 'deadband', 'onDelaySeconds', 'offDelaySeconds'] as const;
export type Figure = typeof figures[number];
export type Draft = Record<Figure | 'source' | 'loosenedBy' | 'loosenedWhy', string>;

const typed = (value: number | null) => value === null ? '' : plain(value);

/** What stands in the fields when a quantity is picked: what the plant file says, else what is in force. */
export function draftOf(q: LimitQuantity): Draft {
  const own = q.ownLow !== null || q.ownHigh !== null;
  return {
    low: typed(own ? q.ownLow : q.low), high: typed(own ? q.ownHigh : q.high), deadband: typed(q.ownDeadband), onDelaySeconds: typed(q.ownOnDelaySeconds), offDelaySeconds: typed(q.ownOffDelaySeconds),
    source: q.source ?? '', loosenedBy: '', loosenedWhy: '',
  };
}

/** What keeps the draft from being asked: field and words. */
export function slips(draft: Draft, days: string, longest: number): Record<string, string> {
  const out: Record<string, string> = {};
  for (const key of figures) if (readTyped(draft[key]).kind === 'wrong') out[key] = words.whatIfLimits.notNumber;
  if (readTyped(draft.low).kind === 'empty' && readTyped(draft.high).kind === 'empty') out['low'] = words.whatIfLimits.needOne;
  const span = readTyped(days);
  if (span.kind !== 'number' || span.value < 1 || span.value > longest) out['from'] = words.whatIfLimits.needDays(String(longest));
  return out;
}

const number = (text: string) => { const t = readTyped(text); return t.kind === 'number' ? t.value : null; };
const text = (t: string) => t.trim() === '' ? null : t.trim();

export const changeOf = (pool: string, q: LimitQuantity, d: Draft): WhatIfLimit => ({
  pool, measurand: q.measurand, low: number(d.low), high: number(d.high), deadband: number(d.deadband), onDelaySeconds: number(d.onDelaySeconds), offDelaySeconds: number(d.offDelaySeconds),
  source: text(d.source), loosenedBy: text(d.loosenedBy), loosenedWhy: text(d.loosenedWhy),
});

/** The server names fields by their place in the request; the form shows one change. What is said of the change as a whole stands at its first figure. */
export function fieldsOf(errors: Record<string, string>): Record<string, string> {
  const out: Record<string, string> = {};
  for (const [path, said] of Object.entries(errors)) {
    const field = path.replace(/^changes\[0\]\.?/, '');
    out[field === '' && path !== '' ? 'low' : field] ??= said;
  }
  return out;
}
