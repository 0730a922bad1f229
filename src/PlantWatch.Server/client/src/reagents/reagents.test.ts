import { describe, expect, it } from 'vitest';
import type { ReagentView } from '../contract.reagent';
import { oldOnes } from './old';

const dpd = (more: Partial<ReagentView> = {}): ReagentView => ({
  id: 'dpd', name: 'DPD 1', tests: ['free_chlorine', 'total_chlorine'], method: 'photometer', daysAfterOpening: null, word: 'out_of_date',
  lot: '26-41', lastDay: '2026-03-31', openedAt: null, notedBy: null, goodUntil: null, why: null, ...more,
});

describe('a reagent that is out of date', () => {
  it('is said beside the tests that are made with it, by its method', () => {
    expect(oldOnes([dpd()], 'free_chlorine', 'photometer')).toHaveLength(1);
    expect(oldOnes([dpd()], 'free_chlorine', 'comparator')).toHaveLength(0);
    expect(oldOnes([dpd({ method: 'any' })], 'free_chlorine', 'comparator')).toHaveLength(1);
    expect(oldOnes([dpd({ method: 'any' })], 'free_chlorine', 'meter')).toHaveLength(0);
    expect(oldOnes([dpd()], 'ph', 'photometer')).toHaveLength(0);
  });
  it('is not said while it is in date, or nobody has noted a lot', () => {
    for (const word of ['in_date', 'order', 'not_noted'] as const) expect(oldOnes([dpd({ word })], 'free_chlorine', 'photometer')).toHaveLength(0);
  });
});
