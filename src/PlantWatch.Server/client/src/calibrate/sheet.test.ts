import { describe, expect, it } from 'vitest';
import { emptyDraft, emptyPoint, type BenchDraft } from './draft';
import { isComplete, isNoPh, missingOf, sheetOf, valueAt } from './sheet';

const point = (reading: string, buffer: 'technical7' | 'technical4' = 'technical7') => ({ ...emptyPoint(buffer), celsius: '24,5', typed: reading });
const draft = (change: Partial<BenchDraft>): BenchDraft => ({ ...emptyDraft('ph'), ...change });

describe('a sheet of the bench', () => {
  it('says what is missing of a point and what is no number', () => {
    expect(missingOf({ ...emptyPoint('technical7'), typed: 'seven' })).toEqual({ celsius: 'empty', reading: 'wrong' });
    expect(missingOf({ ...point('7.1'), labelled: true })).toEqual({ label: 'empty' });
    expect(isComplete({ ...point(''), settled: 7.02 })).toBe(true);
  });

  it('knows a typed pH that no water has, and lets millivolts be what they are', () => {
    expect([point('72.2'), point('-1'), point('7,22'), point(''), { ...point('-177'), millivolts: true }].map(isNoPh)).toEqual([true, true, false, false, false]);
  });

  it('calibrates by what was found where nothing was touched', () => {
    const sheet = sheetOf(draft({ found: [point('7.1'), point('4.1', 'technical4')], points: [point('9'), point('9')], untouched: true, work: ['cleaned'] }), ' R. Example ', null);
    expect(sheet.points).toEqual(sheet.asFound);
    expect([sheet.by, sheet.work, sheet.points[0]?.celsius, sheet.points[0]?.reading, sheet.points[0]?.source]).toEqual(['R. Example', [], 24.5, 7.1, 'typed']);
  });

  it('leaves out what was not measured, and gives a bottle its lot wherever it was used', () => {
    const sheet = sheetOf(draft({ found: [point('7.3'), emptyPoint('technical4')], points: [point('7.1'), { ...point(''), settled: 4.05, buffer: 'technical4' }], bottles: { technical7: { lot: ' K1 ', expires: '2027-01-01' } } }), 'R', null);
    expect(sheet.asFound).toHaveLength(1);
    expect(sheet.points.map(p => [p.lot, p.expires, p.source])).toEqual([['K1', '2027-01-01', 'typed'], [null, null, 'settled']]);
    expect(sheet.asFound[0]?.lot).toBe('K1');
  });

  it('reads a buffer between two rows and knows nothing outside of its table', () => {
    const table = [{ celsius: 20, value: 7.02 }, { celsius: 25, value: 7 }];
    expect(valueAt(table, 22.5)).toBeCloseTo(7.01, 9);
    expect([valueAt(table, 19), valueAt(table, null)]).toEqual([null, null]);
  });
});
