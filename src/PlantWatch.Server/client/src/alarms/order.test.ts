import { expect, test } from 'vitest';
import type { AlarmView, Priority } from '../contract';
import { families } from './order';

const alarm = (id: string, priority: Priority, more: Partial<AlarmView> = {}) =>
  ({ id, priority, state: 'unacknowledged', acknowledged: false, raisedAt: '2026-05-01T10:00:00Z', ...more }) as AlarmView;
const drawn = (all: AlarmView[]) => families(all).map(f => [f.cause.id, ...f.follow.map(a => a.id)].join(' > '));

test('what follows from an alarm stands under it, first out first', () => {
  expect(drawn([alarm('b', 'low', { consequenceOf: 'c', order: 3 }), alarm('a', 'low', { consequenceOf: 'c', order: 2 }), alarm('c', 'high', { order: 1 })])).toEqual(['c > a > b']);
});
test('a consequence worse than its cause is never put under it', () => {
  expect(drawn([alarm('worse', 'critical', { consequenceOf: 'c' }), alarm('c', 'low')])).toEqual(['worse', 'c']);
});
test('a consequence that nobody has seen is not put under a cause that was seen', () => {
  expect(drawn([alarm('a', 'low', { consequenceOf: 'c' }), alarm('c', 'high', { acknowledged: true })])).toEqual(['a', 'c']);
});
test('alarms that name each other, or one that is gone, are all still there', () => {
  expect(drawn([alarm('a', 'low', { consequenceOf: 'b' }), alarm('b', 'low', { consequenceOf: 'a' }), alarm('d', 'low', { consequenceOf: 'gone' })]).join(' ').split(' ').sort()).toEqual(['a', 'b', 'd']);
});
