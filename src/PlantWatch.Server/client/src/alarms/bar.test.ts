import { expect, test } from 'vitest';
import type { AlarmView, Priority } from '../contract';
import { barOf } from './bar';

const alarm = (id: string, priority: Priority, more: Partial<AlarmView> = {}) =>
  ({ id, priority, state: 'unacknowledged', acknowledged: false, annunciates: true, raisedAt: '2026-05-01T10:00:00Z', ...more }) as AlarmView;
const bar = (all: AlarmView[], dead = false) => barOf(all, 'known', dead, 0);

test('the gravest that calls is named, and of equals the newest', () => {
  const all = [alarm('old', 'high'), alarm('new', 'high', { annunciatedAt: '2026-05-01T11:00:00Z' }), alarm('lesser', 'low', { annunciatedAt: '2026-05-01T12:00:00Z' })];
  expect(bar(all).shown?.id).toBe('new');
});
test('a grave alarm that its cause speaks for does not hide the one that calls', () => {
  const all = [alarm('cause', 'high'), alarm('follows', 'high', { annunciates: false, consequenceOf: 'cause', raisedAt: '2026-05-01T12:00:00Z' })];
  expect(bar(all)).toMatchObject({ calls: true, shown: { id: 'cause' }, counts: [{ priority: 'high', n: 1 }] });
});
test('what is gone and was never seen is named when nothing calls, and calls nobody', () => {
  expect(bar([alarm('gone', 'low', { state: 'returned_unacknowledged', annunciates: false })])).toMatchObject({ calls: false, shown: { id: 'gone' } });
});
test('what is set aside is not counted, but what is out of service is told', () => {
  expect(bar([alarm('a', 'high', { state: 'shelved', annunciates: false }), alarm('b', 'low', { state: 'out_of_service', annunciates: false })])).toMatchObject({ kind: 'none', counts: [], shown: null, outOfService: 1 });
});
test('no circuit known is unknown, and a pool of which nothing is known is no good news', () => {
  expect(barOf([], 'not_yet', false, 0).kind).toBe('unknown');
  expect(barOf([], 'known', false, 2).kind).toBe('blind');
});
test('without a pool nothing is watched, which is no good news either; what stands all the same is told', () => {
  expect(barOf([], 'no_plant', false, 0).kind).toBe('nothing');
  expect(barOf([alarm('a', 'high')], 'no_plant', false, 0).kind).toBe('alarms');
});
