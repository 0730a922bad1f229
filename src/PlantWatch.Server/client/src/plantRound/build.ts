import type { PlantRoundRequest, PlantRoundView, RoundItemView, RoundReading } from '../contract.plantRound';
import { grouped, plain, readTyped, unitText } from '../format/number';
import { words } from '../words';
import { isPossible, possible } from './doubt';
import type { Draft } from './store';

export type Errors = Record<string, string>;

/** A unit as it stands on the gauge. */
export const unitOfItem = (item: RoundItemView): string => (item.unit === 'm3' ? 'm\u00b3' : unitText(item.unit));

/** What no gauge of the kind can show, while it is typed and when it is saved. */
export function wrongOf(item: RoundItemView, said: string | undefined): string | undefined {
  const typed = readTyped(said ?? '');
  if (item.kind === 'works' || typed.kind === 'empty') return undefined;
  if (typed.kind === 'wrong') return words.plantRound.number;
  const [low, high] = possible[item.kind];
  return isPossible(item.kind, typed.value) ? undefined : words.plantRound.impossible(plain(low), grouped(high), unitOfItem(item));
}

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
    const typed = readTyped(draft.values[item.id] ?? ''), wrong = wrongOf(item, draft.values[item.id]);
    if (wrong) errors[item.id] = wrong;
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
