import { words } from '../../words';
import { lazyPart } from '../../parts/lazyPart';
import { probesOf } from '../resolve';
import { Nothing } from './Nothing';
import { aboutOf, type TileProps } from './props';
import type { TileStripsProps } from './TileStrips';

const { Lazy } = lazyPart<TileStripsProps>(() => import('./TileStrips'));

/** Trends of probes under one time axis, until now. */
export function StripTile(p: TileProps) {
  const probes = probesOf(p.tile, aboutOf(p));
  if (probes.length === 0) return <Nothing of={words.boards.noProbes} />;
  return <Lazy probes={probes} {...p} />;
}
