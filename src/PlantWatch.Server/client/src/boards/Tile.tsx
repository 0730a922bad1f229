import type { ComponentChildren } from 'preact';
import type { TileKind, TileView } from '../contract.boards';
import { WarnGlyph } from '../parts/Glyph';
import { words } from '../words';
import { AlarmsTile } from './tiles/AlarmsTile';
import { BalanceTile } from './tiles/BalanceTile';
import { ClockTile } from './tiles/ClockTile';
import { DueTile } from './tiles/DueTile';
import { JobsTile } from './tiles/JobsTile';
import { NotesTile } from './tiles/NotesTile';
import { PoolsTile } from './tiles/PoolsTile';
import { ProbesTile } from './tiles/ProbesTile';
import { PumpsTile } from './tiles/PumpsTile';
import { ReadoutTile } from './tiles/ReadoutTile';
import { StripTile } from './tiles/StripTile';
import { TestsTile } from './tiles/TestsTile';
import { TrustTile } from './tiles/TrustTile';
import type { TileProps } from './tiles/props';

const w = words.boards;

const parts: Record<TileKind, (p: TileProps) => ComponentChildren> = {
  pools: PoolsTile, readout: ReadoutTile, strip: StripTile, balance: BalanceTile, tests: TestsTile, alarms: AlarmsTile, due: DueTile, pumps: PumpsTile, probes: ProbesTile,
  trust: TrustTile, jobs: JobsTile, notes: NotesTile, clock: ClockTile,
};

/** Cards lie on sheets of their own. */
const isOpen = (tile: TileView) => tile.show === 'pools';

/** One part of a board: its title, what it names that the plant has not, and what it shows. */
export function Tile(props: TileProps & { n: number }) {
  const { tile } = props, Part = parts[tile.show];
  return (
    <div role="group" class={`tile t-${tile.room} k-${tile.show} ${isOpen(tile) ? '' : 'sheet card'}`} data-testid={`tile-${props.n}`} data-show={tile.show} aria-labelledby={`tile-${props.n}`}>
      <h2 id={`tile-${props.n}`}>{tile.title ?? w.kinds[tile.show]}</h2>
      {tile.problems.length > 0 && <ul class="tile-problems" data-testid="tile-problems">{tile.problems.map(p => <li key={p} class="mark"><WarnGlyph /><span>{w.tileProblem(p)}</span></li>)}</ul>}
      <Part {...props} />
    </div>
  );
}
