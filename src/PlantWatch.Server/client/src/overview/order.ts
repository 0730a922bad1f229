import { priorities, rankOf } from '../alarms/priorities';
import type { PoolWord, Priority } from '../contract';

const worst: PoolWord[] = ['stop', 'alarm', 'attention', 'unknown', 'due', 'normal'];

/** What a pool is ordered by: its state and the alarms on it. */
export interface Weight { state: PoolWord; alarms: readonly { priority: Priority }[] }

/** The gravest alarm; behind all where there is none. */
const gravest = (w: Weight) => Math.min(priorities.length, ...w.alarms.map(rankOf));

/** Worst state first; what is not known stands before what is merely due. Within a state by the gravest alarm, then by how many there are, then in the order of the plant file. */
export function worstFirst<T>(items: readonly T[], weigh: (item: T) => Weight): T[] {
  const weighed = items.map(item => ({ item, w: weigh(item) }));
  weighed.sort((a, b) => worst.indexOf(a.w.state) - worst.indexOf(b.w.state) || gravest(a.w) - gravest(b.w) || b.w.alarms.length - a.w.alarms.length);
  return weighed.map(x => x.item);
}
