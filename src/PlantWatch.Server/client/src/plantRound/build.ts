import type { PlantRoundRequest, PlantRoundView, RoundReading } from '../contract.plantRound';
import { readTyped } from '../format/number';
import { words } from '../words';
import type { Draft } from './store';

export type Errors = Record<string, string>;

const text = (t: string | undefined) => t?.trim() || null;

/** Reads the draft; with errors it is not to be sent. */
export function buildRound(view: PlantRoundView, draft: Draft, now: number): { request: PlantRoundRequest; errors: Errors } {
  const errors: Errors = {}, readings: RoundReading[] = [], w = words.plantRound;
  for (const item of view.items) {
    const remark = text(draft.remarks[item.id]);
    if (item.kind === 'works') {
      const said = draft.works[item.id] ?? '';
      if (said !== '') readings.push({ itemId: item.id, value: null, works: said === 'yes', remark });
      continue;
    }
    const typed = readTyped(draft.values[item.id] ?? '');
    if (typed.kind === 'wrong') errors[item.id] = w.number;
    if (typed.kind === 'number') readings.push({ itemId: item.id, value: typed.value, works: null, remark });
  }
  const note = text(draft.note);
  if (!draft.by.trim()) errors['by'] = words.needName;
  if (readings.length === 0 && note === null && Object.keys(errors).every(k => k === 'by')) errors['form'] = w.needSomething;
  return { request: { circuit: view.circuit, walkedAt: draft.walkedAt ?? new Date(now).toISOString(), by: draft.by.trim(), readings, remark: note }, errors };
}

/** The server names a reading by its place in the request; the form by its item. */
export const itemOf = (field: string, request: PlantRoundRequest): string => {
  const at = /^readings\[(\d+)\]/.exec(field);
  return at ? request.readings[Number(at[1])]?.itemId ?? 'form' : field === 'by' ? 'by' : 'form';
};
