import type { AlarmView } from '../contract';
import { order, type Call } from './tones';

/** Something that calls by sound. A key is of one call: an alarm that speaks again has another one, and is heard again. */
export interface Calling { key: string; call: Call }

export const keyOf = (a: AlarmView) => `${a.id} ${a.annunciatedAt ?? a.raisedAt}`;

/** What calls now. Shelved, suppressed, out of service and what its cause speaks for do not; a note never does. */
export function callsOf(all: AlarmView[], lostSince: number | null): Calling[] {
  const calls: Calling[] = all.flatMap(a => (a.annunciates && a.priority !== 'note' ? [{ key: keyOf(a), call: a.priority }] : []));
  return lostSince === null ? calls : [...calls, { key: `lost ${lostSince}`, call: 'lost' as const }];
}

/** What a person has not silenced. */
export const loudOf = (calls: Calling[], silenced: ReadonlySet<string>) => calls.filter(c => !silenced.has(c.key));

export const gravestOf = (calls: Calling[]): Call | null => order.find(o => calls.some(c => c.call === o)) ?? null;
