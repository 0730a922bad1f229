import { PumpCard } from '../../pumps/PumpCard';
import { words } from '../../words';
import { pumpsOf } from '../resolve';
import { Nothing } from './Nothing';
import { aboutOf, type TileProps } from './props';

/** Dosing pumps and their tanks. */
export function PumpsTile(p: TileProps) {
  const pumps = pumpsOf(p.tile, aboutOf(p));
  return pumps.length === 0 ? <Nothing of={words.poolPage.noPumps} /> : <ul class="pump-list">{pumps.map(x => <PumpCard key={x.id} pump={x} small own={p.wall} />)}</ul>;
}
