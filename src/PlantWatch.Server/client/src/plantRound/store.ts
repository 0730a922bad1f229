import { signal } from '@preact/signals';
import { recallJson, remember } from '../api/kept';
import type { PlantRoundView } from '../contract.plantRound';

/** What was typed for a circuit's round, every field a text. */
export interface Draft { values: Record<string, string>; works: Record<string, '' | 'yes' | 'no'>; remarks: Record<string, string>; by: string; note: string }

export const empty: Draft = { values: {}, works: {}, remarks: {}, by: '', note: '' };

const key = (circuit: string) => `plantRound.${circuit}`;
export const draftOf = (circuit: string): Draft => ({ ...empty, ...recallJson<Draft>(key(circuit)) });
export const keepDraft = (circuit: string, draft: Draft | null): boolean => remember(key(circuit), draft && JSON.stringify(draft));

/** The rounds as last heard of: a plant room in a cellar has no signal. */
export const known = signal<PlantRoundView[]>(recallJson<PlantRoundView[]>('plantRounds') ?? []);

export function tookRounds(views: PlantRoundView[]): void {
  known.value = views;
  remember('plantRounds', JSON.stringify(views));
}
