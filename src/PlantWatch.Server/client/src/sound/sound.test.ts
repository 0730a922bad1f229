import { expect, test } from 'vitest';
import type { AlarmView, Priority } from '../contract';
import { callsOf, gravestOf, keyOf, loudOf } from './calls';
import { order, secondsOf, tones } from './tones';

const alarm = (id: string, priority: Priority, more: Partial<AlarmView> = {}) => ({ id, priority, annunciates: true, raisedAt: '2026-05-01T10:00:00Z', ...more }) as AlarmView;
const loud = (all: AlarmView[], ...silenced: string[]) => gravestOf(loudOf(callsOf(all, null), new Set(silenced)));

test('the gravest of what calls is heard', () => {
  expect(loud([alarm('a', 'low'), alarm('b', 'critical'), alarm('c', 'high')])).toBe('critical');
});
test('what is put away or spoken for does not call, and a note never does', () => {
  expect(loud([alarm('a', 'critical', { annunciates: false, state: 'suppressed_by_design' }), alarm('b', 'note')])).toBeNull();
});
test('silencing one alarm leaves the others', () => {
  const high = alarm('a', 'high'), low = alarm('b', 'low');
  expect(loud([high, low], keyOf(high))).toBe('low');
});
test('an alarm that speaks again is heard again, though it was silenced', () => {
  const once = alarm('a', 'high', { annunciatedAt: '2026-05-01T10:00:00Z' }), again = { ...once, annunciatedAt: '2026-05-01T14:00:00Z' };
  expect(loud([once], keyOf(once))).toBeNull();
  expect(loud([again], keyOf(once))).toBe('high');
});
test('a server that is not heard calls, also when no alarm did', () => {
  expect(gravestOf(callsOf([], 1))).toBe('lost');
});
test('the graver a call, the sooner it is heard again; a figure ends before it begins anew', () => {
  const again = (['critical', 'high', 'medium'] as const).map(p => tones[p].every!);
  expect([...again].sort((a, b) => a - b)).toEqual(again);
  for (const call of order) expect(secondsOf(tones[call])).toBeLessThan(tones[call].every ?? Infinity);
});
