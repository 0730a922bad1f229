import type { PlantRoundView, RoundWord } from '../contract.plantRound';
import { clock, dayClock, toField } from '../format/zone';

/** The rounds and when they were heard, server time in Unix milliseconds; null when that is not known. */
export interface Heard { at: number | null; views: PlantRoundView[] }

/** Out of what the device kept; what earlier pages kept has no time. */
export function heardOf(kept: unknown): Heard {
  if (Array.isArray(kept)) return { at: null, views: kept as PlantRoundView[] };
  const heard = kept as Partial<Heard> | null;
  return { at: typeof heard?.at === 'number' ? heard.at : null, views: Array.isArray(heard?.views) ? heard.views : [] };
}

/** Whether what was heard was said of the day that it is now at the site. */
export const isOfToday = (at: number | null, now: number, zone: string): boolean => at !== null && toField(at, zone).slice(0, 10) === toField(now, zone).slice(0, 10);

/** The word for a round: null where only another day's is known. A time to be ready by that has passed since is no longer to come. */
export function wordNow(view: PlantRoundView, heard: Heard, answered: boolean, now: number, zone: string): RoundWord | null {
  if (answered) return view.word;
  if (!isOfToday(heard.at, now, zone)) return null;
  return view.word === 'due' && Date.parse(view.dueAt) < now ? 'overdue' : view.word;
}

/** When it was heard, with its day unless that is today's; empty where nobody knows. */
export const heardAt = (at: number | null, now: number, zone: string): string => (at === null ? '' : (isOfToday(at, now, zone) ? clock : dayClock)(at, zone));
