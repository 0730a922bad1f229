import { describe, expect, it } from 'vitest';
import { words } from '../words';
import { newStop, nextScreen, screenBefore, type Stop } from './round';
import { screenOf, wrongIn, wrongOn } from './wrong';

const at = Date.UTC(2026, 5, 1, 6, 0);
const row = (text: string, dilution = '') => ({ text, bound: 'none', method: 'photometer', dilution }) as const;
const stop: Stop = newStop('main', ['free_chlorine', 'ph']);
const typed = (change: Partial<Stop['draft']>): Stop => ({ ...stop, draft: { ...stop.draft, ...change } });

describe('what stands wrong on a round', () => {
  it('is said on its own screen: no number, no pH, no number of bathers', () => {
    const s = typed({ rows: { free_chlorine: row('abc', '0'), ph: row('17,2') }, bathers: 'zw\u00f6lf', panel: { p: 'x' } });
    expect(wrongOn(s, 'free_chlorine', 'UTC', at)).toEqual({ free_chlorine: words.check.notNumber, 'dilution-free_chlorine': words.check.dilutionLow });
    expect(wrongOn(s, 'ph', 'UTC', at)).toEqual({ ph: words.check.phRange });
    expect(Object.keys(wrongOn(s, 'around', 'UTC', at)).sort()).toEqual(['bathers', 'panel-p']);
  });
  it('is nothing while nothing was typed, and nothing of a test that this round does not make', () => {
    expect(wrongIn(stop, 'UTC', at)).toEqual({});
    expect(wrongIn(typed({ rows: { total_chlorine: row('abc') } }), 'UTC', at)).toEqual({});
  });
  it('knows the screen that mends it', () => {
    expect(['ph', 'dilution-free_chlorine', 'panel-x', 'bathers', 'place', 'form', 'total_chlorine'].map(f => screenOf(stop, f))).toEqual(['ph', 'free_chlorine', 'around', 'around', 'sample', null, null]);
  });
});

describe('one screen gone back to from the look over all', () => {
  it('leads to the look again and not through every screen', () => {
    expect([nextScreen(stop, 'free_chlorine', true), nextScreen(stop, 'around', true), screenBefore(stop, 'ph', true)]).toEqual(['look', 'look', 'look']);
    expect(nextScreen(stop, 'free_chlorine')).toBe('ph');
  });
});
