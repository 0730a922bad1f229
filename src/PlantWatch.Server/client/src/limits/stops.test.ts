import { describe, expect, it } from 'vitest';
import type { SiteView } from '../contract';
import { site } from '../live/store';
import { beyondStop, outside, stops as heard, type StopEnds } from './stops';

// As Core/Rules/Stops has them: common practice, local codes come first.
const stops: StopEnds[] = [{ quantity: 'ph', low: 6.5, high: 8.2 }, { quantity: 'free_chlorine', low: 0.2, high: 10 }, { quantity: 'temperature', low: null, high: 40 }];

describe('a stop', () => {
  it('is told apart from a limit by the end that a value is beyond', () => {
    expect(beyondStop(stops, 'free_chlorine', 0.1)).toEqual({ side: 'low', at: 0.2 });
    expect(beyondStop(stops, 'ph', 8.3)).toEqual({ side: 'high', at: 8.2 });
    expect(beyondStop(stops, 'free_chlorine', 0.5)).toBeNull();
    expect(beyondStop(stops, 'ph', 6.5)).toBeNull();
  });
  it('of a temperature has no lower end, and what has none breaks none', () => {
    expect(beyondStop(stops, 'temperature', -3)).toBeNull();
    expect(beyondStop(stops, 'temperature', 41)).toEqual({ side: 'high', at: 40 });
    expect(beyondStop(stops, 'total_alkalinity', 5000)).toBeNull();
    expect(beyondStop([], 'ph', 3)).toBeNull();
  });
  it('of chlorine is one of bromine by the mole', () => {
    expect(beyondStop(stops, 'bromine', 0.4)).toEqual({ side: 'low', at: 0.45 });
    expect(beyondStop(stops, 'bromine', 12)).toBeNull();
  });
  it('is told where it is broken, and the limit only inside of it', () => {
    site.value = { circuits: [{ id: 'hall', pools: [{ id: 'main', limits: [{ measurand: 'free_chlorine', low: 0.8, high: 3, source: 'test' }] }], probes: [], pumps: [] }] } as unknown as SiteView;
    heard.value = { hall: stops };
    expect(outside('main', 'free_chlorine', 0.1)).toEqual({ says: 'under the stop at 0.20', stop: 'low' });
    expect(outside('main', 'free_chlorine', 0.5)).toMatchObject({ says: expect.stringContaining('0.80'), stop: null });
    expect([outside('main', 'free_chlorine', 1), outside('main', 'free_chlorine', null), outside('elsewhere', 'ph', 3)]).toEqual([null, null, null]);
  });
});
