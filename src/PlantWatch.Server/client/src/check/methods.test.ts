import { describe, expect, it } from 'vitest';
import type { Row } from './draft';
import { looksOf, tabletResult, tabletStep } from './methods';

const row = (more: Partial<Row> = {}): Row => ({ text: '', bound: 'none', method: 'tablet_count', dilution: '', ...more });

describe('tablet counts', () => {
  // Trade rule (common practice): n x 40 - 20 in 50 mL, n x 20 - 10 in 100 mL.
  it('are worked out for any sample, with the step of one tablet', () => {
    expect(tabletResult(row({ tablets: '3' }))).toBe(100);
    expect(tabletResult(row({ tablets: '5', sample: '100' }))).toBe(90);
    expect(tabletResult(row({ tablets: '4', sample: '25' }))).toBe(280);
    expect(tabletStep(row({ sample: '100' }))).toBe(20);
  });
  it('are nothing without a whole count or a sample', () => {
    for (const more of [{ tablets: '' }, { tablets: '2,5' }, { tablets: '0' }, { tablets: '3', sample: '0' }, { tablets: '3', sample: 'x' }]) expect(tabletResult(row(more))).toBeNull();
  });
});

describe('what is seen in the cell', () => {
  it('is asked of colours only, and each test has its own', () => {
    expect(looksOf('free_chlorine', row({ method: 'photometer' }))).toContain('pink_flash');
    expect(looksOf('ph', row({ method: 'comparator' }))).toContain('purple');
    expect(looksOf('ph', row({ method: 'meter' }))).toEqual([]);
    expect(looksOf('temperature', row({ method: 'photometer' }))).toEqual([]);
  });
});
