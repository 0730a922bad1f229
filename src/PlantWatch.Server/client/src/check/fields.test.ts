import { describe, expect, it } from 'vitest';
import type { Problem } from '../contract';
import { build } from './build';
import { emptyDraft } from './draft';
import { nameOfField, refusalOf, saidOf } from './fields';

describe('what was said of a field', () => {
  const row = { text: '99999', bound: 'none', method: 'photometer', dilution: '' } as const;
  const { request } = build({ ...emptyDraft('main'), rows: { total_chlorine: row }, bathers: '999999' }, 'R', 'UTC', 0);
  it('comes after its name', () => {
    const problem = { title: 'Not taken', errors: [{ field: 'results[0].value', code: 'c', text: 'expected 0 to 200 mg/L' }, { field: 'bathers', code: 'c', text: '999999 bathers?' }, { field: 'elsewhere', code: 'c', text: 'so it is' }] } as unknown as Problem;
    expect(refusalOf(request, problem)).toBe('Total chlorine: expected 0 to 200 mg/L. Bathers in the water: 999999 bathers? so it is.');
  });
  it('is the title where no field is named', () => expect(refusalOf(request, { title: 'Not taken', errors: [] } as unknown as Problem)).toBe('Not taken'));
  it('names every field of the form', () => {
    expect(['pool', 'when', 'who', 'point', 'place', 'bathers', 'note', 'bottom', 'ph', 'dilution-ph', 'panel-x'].filter(f => nameOfField(f) === '')).toEqual([]);
    expect(nameOfField('form')).toBe('');
    expect(saidOf([])).toBe('');
  });
});
