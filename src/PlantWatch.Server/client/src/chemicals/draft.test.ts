import { describe, expect, it } from 'vitest';
import type { PumpInfo } from '../contract';
import type { ProductPlan } from '../contract.plant';
import { isWrong, requestOf, store, wrongOf, type Draft } from './draft';

const draft = (more: Partial<Draft> = {}): Draft => ({ productId: 'acid', place: 'acid-pump', amount: '25', containers: '', strength: '', batch: '', madeOn: '', price: '', when: '', checkedBy: 'J. Sample', note: '', wentIn: false, ...more });
const products = [{ id: 'acid', name: 'Acid', kind: 'hydrochloric_acid', strength: 30 }, { id: 'hypo', name: 'Hypo', kind: 'sodium_hypochlorite', strength: 12 }, { id: 'hypo-2', name: 'Hypo 2', kind: 'sodium_hypochlorite', strength: 15 }] as ProductPlan[];
const pumps = [{ id: 'acid-pump', productId: 'acid' }, { id: 'hypo-pump', productId: 'hypo' }] as PumpInfo[];

describe('product and tank', () => {
  it('are held against each other before anything is sent', () => {
    expect(isWrong('delivered', draft({ place: 'hypo-pump' }), products, pumps)?.tank.id).toBe('hypo-pump');
    expect(isWrong('delivered', draft(), products, pumps)).toBeNull();
    expect(isWrong('delivered', draft({ place: store }), products, pumps)).toBeNull();
  });
  it('of one kind may be together', () => expect(isWrong('refilled', draft({ productId: 'hypo-2', place: 'hypo-pump' }), products, pumps)).toBeNull());
});

describe('the form', () => {
  it('asks for two different names', () => {
    expect(wrongOf('delivered', draft({ checkedBy: '' }), 'R. Example', 1)).toHaveProperty('checkedBy');
    expect(wrongOf('delivered', draft({ checkedBy: 'r example' }), 'R. Example', 1)).toHaveProperty('checkedBy');
    expect(wrongOf('counted', draft({ checkedBy: '' }), 'R. Example', 1)).toEqual({});
  });
  it('asks for an amount, which a count may find to be nothing', () => {
    expect(wrongOf('delivered', draft({ amount: '0' }), 'R. Example', 1)).toHaveProperty('amount');
    expect(wrongOf('counted', draft({ amount: '0' }), 'R. Example', 1)).toEqual({});
    expect(wrongOf('delivered', draft({ amount: 'much' }), 'R. Example', 1)).toHaveProperty('amount');
  });
  it('sends litres for a tank and for a liquid, kg for the rest', () => {
    expect(requestOf(draft({ amount: '12,5' }), 'R. Example', 0, 'kilogram')).toMatchObject({ litres: 12.5, kilograms: null, pumpId: 'acid-pump' });
    expect(requestOf(draft({ place: store }), 'R. Example', 0, 'kilogram')).toMatchObject({ litres: null, kilograms: 25, pumpId: null });
  });
});
