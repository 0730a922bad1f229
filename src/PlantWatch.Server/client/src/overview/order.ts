import type { PoolWord } from '../contract';

const worst: PoolWord[] = ['stop', 'alarm', 'attention', 'unknown', 'due', 'normal'];

/** Worst first; what is not known stands before what is merely due. Pools of one state keep the order of the plant file. */
export function worstFirst<T>(items: T[], state: (item: T) => PoolWord): T[] {
  return [...items].sort((a, b) => worst.indexOf(state(a)) - worst.indexOf(state(b)));
}
