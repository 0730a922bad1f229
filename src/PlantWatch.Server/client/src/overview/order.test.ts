import { describe, expect, it } from 'vitest';
import type { PoolWord, Priority } from '../contract';
import { worstFirst } from './order';

const pool = (id: string, state: PoolWord, ...of: Priority[]) => ({ id, state, alarms: of.map(priority => ({ priority })) });
const order = (...pools: ReturnType<typeof pool>[]) => worstFirst(pools, p => p).map(p => p.id).join(' ');

describe('pools on the overview', () => {
  it('stand worst first, and what is not known before what is merely due', () => {
    expect(order(pool('a', 'normal'), pool('b', 'due'), pool('c', 'unknown'), pool('d', 'attention'), pool('e', 'stop'), pool('f', 'alarm'))).toBe('e f d c b a');
  });

  it('stand by their gravest alarm within a state, then by how many there are, then as in the plant file', () => {
    expect(order(pool('a', 'alarm', 'low', 'low', 'low'), pool('b', 'alarm', 'low', 'high'), pool('c', 'alarm', 'critical'), pool('d', 'alarm', 'high'), pool('e', 'alarm'), pool('f', 'alarm', 'high'))).toBe('c b d f a e');
  });

  it('let no number of alarms go before a worse state', () => {
    expect(order(pool('a', 'attention', 'critical', 'critical'), pool('b', 'alarm'))).toBe('b a');
  });
});
