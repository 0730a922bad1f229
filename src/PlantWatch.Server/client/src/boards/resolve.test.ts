import { describe, expect, it } from 'vitest';
import type { CircuitInfo } from '../contract';
import type { TileView } from '../contract.boards';
import { chosenPool, poolsOf, probesOf, pumpsOf } from './resolve';

const probe = (id: string, poolId: string | null, measurand: string) => ({ id, poolId, measurand });
const circuits = [
  { id: 'hall', pools: [{ id: 'main' }, { id: 'teaching' }], probes: [probe('ph', 'main', 'ph'), probe('t-ph', 'teaching', 'ph'), probe('flow', null, 'sample_flow')], pumps: [{ id: 'acid', poolId: 'main' }, { id: 'hypo', poolId: null }] },
  { id: 'spa', pools: [{ id: 'spa' }], probes: [probe('spa-orp', 'spa', 'orp')], pumps: [{ id: 'spa-hypo', poolId: 'spa' }] },
] as unknown as CircuitInfo[];
const tile = (more: Partial<TileView>) => ({ of: [], measurands: [], ...more }) as TileView;
const ids = (all: { id: string }[]) => all.map(x => x.id);
const everywhere = { circuits, pool: null };

describe('what a tile is about', () => {
  it('is everything where nothing is named', () => {
    expect(ids(probesOf(tile({}), everywhere))).toEqual(['ph', 't-ph', 'flow', 'spa-orp']);
    expect(ids(poolsOf(tile({}), everywhere))).toEqual(['main', 'teaching', 'spa']);
  });

  it('is what is named, in the order of the file, without what the plant has not', () => {
    expect(ids(probesOf(tile({ of: ['spa-orp', 'gone', 'ph'] }), everywhere))).toEqual(['spa-orp', 'ph']);
  });

  it('is narrowed by what is measured', () => {
    expect(ids(probesOf(tile({ measurands: ['ph'] }), everywhere))).toEqual(['ph', 't-ph']);
  });

  it('is one pool with what its circuit shares, on a board of one pool', () => {
    const about = { circuits, pool: 'teaching' };
    expect(ids(probesOf(tile({}), about))).toEqual(['t-ph', 'flow']);
    expect(ids(pumpsOf(tile({}), about))).toEqual(['hypo']);
    expect(ids(poolsOf(tile({ of: ['main'] }), about))).toEqual([]);
  });

  it('begins with the first pool where the address names none, or one that is gone', () => {
    expect([chosenPool(circuits, undefined), chosenPool(circuits, 'gone'), chosenPool(circuits, 'spa'), chosenPool([], 'spa')]).toEqual(['main', 'main', 'spa', null]);
  });
});
