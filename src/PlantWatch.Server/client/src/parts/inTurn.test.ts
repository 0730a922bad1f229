import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { inTurn } from './inTurn';

beforeEach(() => { vi.useFakeTimers(); });
afterEach(() => { vi.runAllTimers(); vi.useRealTimers(); });

test('each has a task of its own, in order, and what is taken back is left out', () => {
  const done: string[] = [];
  inTurn(() => done.push('a'));
  const forget = inTurn(() => done.push('b'));
  inTurn(() => done.push('c'));
  expect(done).toEqual([]);
  vi.advanceTimersToNextTimer();
  expect(done).toEqual(['a']);
  forget();
  vi.advanceTimersToNextTimer();
  expect(done).toEqual(['a', 'c']);
});

test('one that fails does not keep the next from its turn, and after a rest it goes on', () => {
  const done: string[] = [];
  inTurn(() => { throw new Error('no canvas'); });
  inTurn(() => done.push('b'));
  expect(() => vi.advanceTimersToNextTimer()).toThrow('no canvas');
  vi.runAllTimers();
  expect(done).toEqual(['b']);
  inTurn(() => done.push('c'));
  vi.runAllTimers();
  expect(done).toEqual(['b', 'c']);
});
