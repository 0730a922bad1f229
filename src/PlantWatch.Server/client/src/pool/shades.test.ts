import { describe, expect, it } from 'vitest';
import { shadesOf } from './shades';

const columns = (t: number[], flow: (number | null)[]) => [t, t.map(() => null), t.map(() => null), flow, t.map(() => null)] as Parameters<typeof shadesOf>[0];

describe('times without flow', () => {
  it('run from the reading that stopped to the one that flows again', () =>
    expect(shadesOf(columns([0, 10, 20, 30], [1, 0, 0, 1]), 40)).toEqual([{ from: 10, to: 30, share: 1 }]));
  it('last until now while nothing has flowed again', () => expect(shadesOf(columns([0, 10], [1, 0]), 40)).toEqual([{ from: 10, to: 40, share: 1 }]));
  it('are told by their share where a mean is all there is', () => expect(shadesOf(columns([0, 10], [0.75, 1]), 20)).toEqual([{ from: 0, to: 10, share: 0.25 }]));
  it('are never made up in a gap', () => expect(shadesOf(columns([0, 10, 20], [1, null, 1]), 30)).toEqual([]));
});
