import { describe, expect, it } from 'vitest';
import ranges from '../../../../PlantWatch.Core/Plans/RoundItem.cs?raw';
import type { RoundItemView } from '../contract.plantRound';
import { doubtOf, isPossible, possible } from './doubt';

const at = Date.parse('2026-06-02T08:00:00Z');
const meter: RoundItemView = { id: 'meter', what: 'make_up_meter', name: 'Meter', kind: 'meter', unit: 'm3', low: null, high: null, lastValue: 4321.5, lastWorks: null, lastAt: '2026-06-01T08:00:00Z', wanted: true };

describe('what a gauge can show', () => {
  it('is what the server takes it for', () => {
    const number = (text: string) => Number(text.replaceAll('_', ''));
    const found = [...ranges.matchAll(/RoundReadingKind\.(\w+) => new\((-?[\d_]+), (-?[\d_]+)\)/g)].map(([, kind, low, high]) => [kind!.replace(/(?<=.)[A-Z]/g, c => '_' + c).toLowerCase(), [number(low!), number(high!)]]);
    const [, low, high] = /_ => new\((-?[\d_]+), (-?[\d_]+)\),\s*};\s*}\s*$/.exec(ranges)!;
    expect(possible).toEqual({ ...Object.fromEntries(found), amount: [number(low!), number(high!)] });
  });
  it('ends where a digit slipped', () => {
    expect([isPossible('percent', 200), isPossible('percent', 725), isPossible('pressure', -100), isPossible('flow', -1)]).toEqual([true, false, true, false]);
  });
});

describe('a make-up meter', () => {
  const says = (text: string, more: Partial<RoundItemView> = {}, holds: number | null = 450) => doubtOf({ ...meter, ...more }, text, at, holds);
  it('that went backwards is read again', () => expect(says('4312,5')).toEqual({ kind: 'back' }));
  it('that ran on by some of the water is not in doubt', () => expect(says('4340')).toBeNull());
  it('that ran on by far more than a plant takes in a day is', () => {
    expect(says('4521,5')).toEqual({ kind: 'far', more: 200 });
    // In four days a plant takes four times as much.
    expect(says('4521,5', { lastAt: '2026-05-29T08:00:00Z' })).toBeNull();
    expect(says('43415', { lastAt: null })).toMatchObject({ kind: 'far' });
  });
  it('is not judged where nothing was read before, or nobody knows what the pools hold', () => {
    expect(says('9999', { lastValue: null })).toBeNull();
    expect(says('9999', {}, null)).toBeNull();
  });
  it('that cannot show this is told so and not doubted too', () => expect(says('-5')).toBeNull());
});
