import { describe, expect, it } from 'vitest';
import type { StockOutlookView, StockView } from '../contract.stock';
import { amountOf, lasting, money, runningOut } from './lasting';

const found = (more: Partial<StockOutlookView> = {}): StockOutlookView => ({ earliest: 9.6, middle: 11, latest: 14.2, perDay: 12, byWeekday: false, days: 28, ...more });

describe('how long a stock lasts', () => {
  it('is said as an interval of whole days, rounded to the careful side', () => expect(lasting(found())).toBe('lasts 9 to 14 days'));
  it('is said once when both ends are the same day', () => expect(lasting(found({ earliest: 4.1, latest: 4.8 }))).toBe('lasts 4 days'));
  it('has no far end beyond a year', () => {
    expect(lasting(found({ latest: null }))).toBe('lasts 9 days at least');
    expect(lasting(found({ earliest: null, middle: null, latest: null }))).toBe('lasts more than a year');
  });
  it('is used up, or not known', () => {
    expect(lasting(found({ earliest: 0, middle: 0, latest: 0 }))).toBe('used up');
    expect(lasting(null)).toBeNull();
    expect(lasting(found({ earliest: null, middle: null, latest: null, perDay: 0 }))).toBeNull();
  });
});

describe('amounts', () => {
  it('have three figures at most', () => expect([amountOf(1234.5, 'litre'), amountOf(12.34, 'kilogram'), amountOf(0.0456, 'litre'), amountOf(null, 'litre')]).toEqual(['1235\u00a0L', '12.3\u00a0kg', '0.046\u00a0L', '\u2013']));
  it('of money keep what is small', () => expect([money(1234.5), money(13.2), money(0.0443), money(null)]).toEqual(['1235', '13.20', '0.0443', '\u2013']));
});

describe('what runs out', () => {
  const product = (id: string, earliest: number | null, runsOut = false) => ({ id, runsOut, outlook: earliest === null ? null : found({ earliest }) }) as StockView;
  it('is what lasts a week at most or less than an order takes, soonest first', () =>
    expect(runningOut([product('a', 6), product('b', 9), product('c', 9, true), product('d', null), product('e', 1)]).map(p => p.id)).toEqual(['e', 'a', 'c']));
});
