import { expect, test } from 'vitest';
import type { LimitQuantity } from '../contract.whatIfLimits';
import { changeOf, draftOf, fieldsOf, slips } from './asked';

const ph: LimitQuantity = {
  measurand: 'ph', name: 'pH', unit: 'pH', watched: true, low: 7.2, lowFrom: 'ph-low', high: 7.6, highFrom: '', ownLow: null, ownHigh: 7.6, stop: [6.5, 8.2],
  deadband: 0.05, onDelaySeconds: 120, offDelaySeconds: 120, ownDeadband: null, ownOnDelaySeconds: 60, ownOffDelaySeconds: null, source: 'sheet 4',
};

test('the fields begin with what the plant file says, and with what is in force where it says nothing', () => {
  expect(draftOf(ph)).toMatchObject({ low: '', high: '7.6', deadband: '', onDelaySeconds: '60', source: 'sheet 4' });
  expect(draftOf({ ...ph, ownHigh: null })).toMatchObject({ low: '7.2', high: '7.6' });
});

test('what is no number and what limits nothing is said beside the field', () => {
  const draft = { ...draftOf(ph), high: 'seven' };
  expect(slips(draft, '28', 92)).toHaveProperty('high');
  expect(slips({ ...draft, high: '' }, '28', 92)).toHaveProperty('low');
  expect(slips(draftOf(ph), '0', 92)).toHaveProperty('from');
  expect(slips(draftOf(ph), '28', 92)).toEqual({});
});

test('a comma is a decimal point, and what is empty is not sent', () => {
  expect(changeOf('main', ph, { ...draftOf(ph), high: '7,5' })).toMatchObject({ pool: 'main', low: null, high: 7.5, deadband: null, onDelaySeconds: 60, loosenedBy: null });
});

test('the remarks of the server find their fields', () => {
  expect(fieldsOf({ 'changes[0].high': 'a', 'changes[0]': 'b', from: 'c', '': 'd' })).toEqual({ high: 'a', low: 'b', from: 'c', '': 'd' });
});
