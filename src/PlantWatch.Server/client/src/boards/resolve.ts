import type { TileView } from '../contract.boards';
import type { CircuitInfo, PoolInfo, ProbeInfo, PumpInfo } from '../contract';

/** What a tile is about, found in the plant. `pool` narrows a board that shows one pool at a time; what all pools of its circuit share belongs to it too. */
export interface About { circuits: CircuitInfo[]; pool: string | null }

/** Those that are named, in the order of the file; all where none is. */
function named<T extends { id: string }>(all: T[], of: string[]): T[] {
  if (of.length === 0) return all;
  const byId = new Map(all.map(x => [x.id, x]));
  return of.flatMap(id => byId.get(id) ?? []);
}

/** Of one pool, or shared by the pools of its circuit. */
function within<T extends { poolId: string | null }>(about: About, of: (c: CircuitInfo) => T[]): T[] {
  const circuits = about.pool === null ? about.circuits : about.circuits.filter(c => c.pools.some(p => p.id === about.pool));
  return circuits.flatMap(of).filter(x => about.pool === null || x.poolId === about.pool || x.poolId === null);
}

export const poolsOf = (tile: TileView, about: About): PoolInfo[] =>
  named(about.circuits.flatMap(c => c.pools), tile.of).filter(p => about.pool === null || p.id === about.pool);

export const probesOf = (tile: TileView, about: About): ProbeInfo[] =>
  named(within(about, c => c.probes), tile.of).filter(p => tile.measurands.length === 0 || tile.measurands.includes(p.measurand));

export const pumpsOf = (tile: TileView, about: About): PumpInfo[] => named(within(about, c => c.pumps), tile.of);

/** The pool that a board of one pool shows: the one of the address, else the first of the plant. */
export const chosenPool = (circuits: CircuitInfo[], asked: string | undefined): string | null => {
  const pools = circuits.flatMap(c => c.pools);
  return (pools.find(p => p.id === asked) ?? pools[0])?.id ?? null;
};
