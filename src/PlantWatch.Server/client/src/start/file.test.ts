import { describe, expect, it } from 'vitest';
import type { Json } from '../contract.plantFile';
import { everyText, firstOpen, soFar } from './file';

const none = new Set<string>();
const at = (pool: Json, more: { [key: string]: Json } = {}, circuit: { [key: string]: Json } = {}, left = none) =>
  firstOpen(soFar({ site: { name: 'Baths', time_zone: 'UTC' }, circuits: [{ id: 'c', pools: [pool], ...circuit }], ...more }), left);
const pool = { id: 'main', name: 'Main' };

describe('the first steps', () => {
  it('go on at the first thing that the file does not say', () => {
    expect(firstOpen(soFar({}), none)).toBe('site');
    expect(firstOpen(soFar({ site: { name: 'Baths', time_zone: 'UTC' } }), none)).toBe('pool');
    expect(at(pool)).toBe('probe');
    // The first of several probes is picked: the list stays open until somebody goes on.
    expect(at(pool, {}, { probes: [{ id: 'ph', name: 'pH' }] })).toBe('probe');
    expect(at(pool, {}, {}, new Set(['probe']))).toBe('pack');
  });
  it('are all done on a plant that runs, whichever device asks', () => {
    expect(at(pool, { limit_pack: 'x' })).toBe('value');
    expect(at({ ...pool, limits: [{ measurand: 'ph' }] }, {}, { probes: [{ id: 'ph', name: 'pH' }] })).toBe('value');
    expect(at(pool, {}, { pumps: [{ id: 'acid' }] })).toBe('pack');
  });
});

describe('how often a topic is heard', () => {
  it('is said without decimals that say nothing', () => expect([2, 2.04, 2.5, 9.96, 30.4].map(everyText)).toEqual(['2', '2', '2.5', '10', '30']));
});
