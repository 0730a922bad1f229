import { describe, expect, it } from 'vitest';
import type { CheckAnswer } from '../contract';
import { marksOf } from './marks';

const check = (id: string, verdict: string) => ({
  check: { id, sampledAt: '2026-05-04T07:00:00Z', who: 'R', results: [{ measurand: 'ph', value: 7.4, censoring: 'none' }] },
  judgements: [{ probeId: 'p', verdict, test: { value: 7.4, u: 0.12 } }], combined: null,
}) as unknown as CheckAnswer;
const sets = (doubted: string[], takenIn: string[]) => ({ doubted: new Set(doubted), takenIn: new Set(takenIn) });

describe('the tests on a strip', () => {
  it('are doubted as their judgement said', () => expect(marksOf([check('a', 'check_suspect')], 'ph', 'p')[0]!.doubted).toBe(true));
  it('count again once a repeat has confirmed them', () => expect(marksOf([check('a', 'check_suspect')], 'ph', 'p', sets([], ['a']))[0]!.doubted).toBe(false));
  it('are doubted now though they were taken in at first', () => expect(marksOf([check('a', 'agrees')], 'ph', 'p', sets(['a'], []))[0]!.doubted).toBe(true));
});
