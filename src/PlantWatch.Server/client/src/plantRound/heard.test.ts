import { describe, expect, it } from 'vitest';
import type { PlantRoundView } from '../contract.plantRound';
import { heardAt, heardOf, wordNow } from './heard';

const zone = 'Europe/London';
const view: PlantRoundView = { circuit: 'hall', name: 'Hall', word: 'walked', dueAt: '2026-06-01T11:00:00Z', walkedAt: '2026-06-01T08:00:00Z', by: 'R. Castellan', items: [] };
const heard = { at: Date.parse('2026-06-01T09:00:00Z'), views: [view] };
const at = (iso: string) => Date.parse(iso);

describe('rounds that the device kept', () => {
  it('stand as the server says while it answers', () => expect(wordNow(view, heard, true, at('2026-06-09T09:00:00Z'), zone)).toBe('walked'));
  it('keep their word for the day on which they were heard', () => expect(wordNow(view, heard, false, at('2026-06-01T22:30:00Z'), zone)).toBe('walked'));
  it('are not said to be of today from the site\u2019s midnight on', () => {
    expect(wordNow(view, heard, false, at('2026-06-01T23:30:00Z'), zone)).toBeNull();
    expect(wordNow(view, { ...heard, at: null }, false, at('2026-06-01T10:00:00Z'), zone)).toBeNull();
  });
  it('are overdue when their time has passed since', () => {
    const due = { ...view, word: 'due' as const };
    expect(wordNow(due, heard, false, at('2026-06-01T10:59:00Z'), zone)).toBe('due');
    expect(wordNow(due, heard, false, at('2026-06-01T11:01:00Z'), zone)).toBe('overdue');
  });
  it('say when they were heard, with the day when it is another', () => {
    expect(heardAt(heard.at, at('2026-06-01T12:00:00Z'), zone)).toBe('10:00');
    expect(heardAt(heard.at, at('2026-06-02T12:00:00Z'), zone)).toMatch(/1 Jun.*10:00/);
    expect(heardAt(null, at('2026-06-02T12:00:00Z'), zone)).toBe('');
  });
  it('are read as earlier pages kept them, without a time', () => {
    expect(heardOf([view])).toEqual({ at: null, views: [view] });
    expect(heardOf(heard)).toEqual(heard);
    expect(heardOf(null)).toEqual({ at: null, views: [] });
  });
});
