import { describe, expect, it } from 'vitest';
import type { PlantRoundView, RoundItemView } from '../contract.plantRound';
import { buildRound, itemOf } from './build';
import { empty, isTyped, typedAgain, typedIn } from './store';

const item = (id: string, kind: RoundItemView['kind']): RoundItemView => ({ id, what: 'other', name: id, kind, unit: '', low: null, high: null, lastValue: null, lastWorks: null, lastAt: null, wanted: true });
const view: PlantRoundView = { circuit: 'hall', name: 'Hall', word: 'due', dueAt: '2026-06-01T08:00:00Z', walkedAt: null, by: null, items: [item('in', 'pressure'), item('meter', 'meter'), item('eyewash', 'works')] };

describe('a plant round', () => {
  it('sends what was typed and leaves out what was not', () => {
    const { request, errors } = buildRound(view, { ...empty, by: ' R. Castellan ', values: { in: '82,5' }, works: { eyewash: 'no' }, remarks: { eyewash: 'no water' } }, 0);
    expect(errors).toEqual({});
    expect(request.by).toBe('R. Castellan');
    expect(request.readings).toEqual([{ itemId: 'in', value: 82.5, works: null, remark: null }, { itemId: 'eyewash', value: null, works: false, remark: 'no water' }]);
  });
  it('asks for a name, for numbers, and for anything at all', () => {
    expect(Object.keys(buildRound(view, empty, 0).errors)).toEqual(['by', 'form']);
    expect(Object.keys(buildRound(view, { ...empty, by: 'R', values: { in: '8,2,5' } }, 0).errors)).toEqual(['in']);
    expect(buildRound(view, { ...empty, by: 'R', note: 'smells of chlorine' }, 0).errors).toEqual({});
  });
  it('says of every gauge at once what it cannot show', () => {
    const { errors } = buildRound(view, { ...empty, by: 'R', values: { in: '8250', meter: '-1' } }, 0);
    expect(errors).toEqual({ in: 'A gauge shows \u2212100 to 2\u202f000 : read it again.', meter: 'A gauge shows 0 to 100\u202f000\u202f000 : read it again.' });
  });
  it('keeps a remark until its own field is changed', () => {
    const d = { ...empty, values: { in: '1' } };
    expect(typedIn(d, 'in')).not.toBe(typedIn({ ...d, values: { in: '2' } }, 'in'));
    expect(typedIn(d, 'in')).toBe(typedIn({ ...d, values: { ...d.values, meter: '2' } }, 'in'));
  });
  it('comes back into the form as it was sent, with the time at which it was walked', () => {
    const { request } = buildRound(view, { ...empty, by: 'R. Castellan', values: { in: '-82,5', meter: '12' }, works: { eyewash: 'no' }, remarks: { eyewash: 'no water' }, note: 'smells' }, 0);
    const again = typedAgain(request);
    expect(isTyped(again)).toBe(true);
    expect(buildRound(view, again, 86_400_000)).toEqual({ request, errors: {} });
    expect(buildRound(view, { ...again, walkedAt: null }, 86_400_000).request.walkedAt).toBe('1970-01-02T00:00:00.000Z');
    expect(isTyped({ ...empty, by: 'R. Castellan' })).toBe(false);
  });
  it('finds the field that the server names', () => {
    const { request } = buildRound(view, { ...empty, by: 'R', works: { eyewash: 'yes' } }, 0);
    expect(itemOf('readings[0]', request)).toBe('eyewash');
    expect(itemOf('by', request)).toBe('by');
    expect(itemOf('walkedAt', request)).toBe('form');
  });
});
