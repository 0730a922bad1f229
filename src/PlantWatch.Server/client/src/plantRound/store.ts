import { signal } from '@preact/signals';
import { recallJson, remember } from '../api/kept';
import type { PlantRoundRequest, PlantRoundView } from '../contract.plantRound';
import { plain } from '../format/number';
import { heardOf, type Heard } from './heard';

/** What was typed for a circuit's round, every field a text. A round that was refused keeps when it was walked. */
export interface Draft { values: Record<string, string>; works: Record<string, '' | 'yes' | 'no'>; remarks: Record<string, string>; by: string; note: string; walkedAt?: string | null }

export const empty: Draft = { values: {}, works: {}, remarks: {}, by: '', note: '' };

const key = (circuit: string) => `plantRound.${circuit}`;
export const draftOf = (circuit: string): Draft => ({ ...empty, ...recallJson<Draft>(key(circuit)) });
export const keepDraft = (circuit: string, draft: Draft | null): boolean => remember(key(circuit), draft && JSON.stringify(draft));

/** Whether anything but a name stands in it. */
export const isTyped = (d: Draft): boolean => d.note.trim() !== '' || [d.values, d.works, d.remarks].some(of => Object.values(of).some(text => text !== ''));

/** What stands in a field, so that a remark can go when its field is changed. */
export const typedIn = (d: Draft, field: string): string =>
  field === 'by' ? d.by : field === 'form' ? JSON.stringify(d) : `${d.values[field] ?? ''} ${d.works[field] ?? ''} ${d.remarks[field] ?? ''}`;

/** A draft again out of what the server refused. */
export const typedAgain = (r: PlantRoundRequest): Draft => ({
  values: Object.fromEntries(r.readings.flatMap(x => (x.value === null ? [] : [[x.itemId, plain(x.value)]]))),
  works: Object.fromEntries(r.readings.flatMap(x => (x.works === null ? [] : [[x.itemId, x.works ? 'yes' as const : 'no' as const]]))),
  remarks: Object.fromEntries(r.readings.flatMap(x => (x.remark === null ? [] : [[x.itemId, x.remark]]))),
  by: r.by, note: r.remark ?? '', walkedAt: r.walkedAt,
});

/** The rounds as last heard of, and when: a plant room in a cellar has no signal. */
export const known = signal<Heard>(heardOf(recallJson<unknown>('plantRounds')));

export function tookRounds(views: PlantRoundView[], at: number): void {
  known.value = { at, views };
  remember('plantRounds', JSON.stringify(known.value));
}
