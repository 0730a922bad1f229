import type { TileView } from '../../contract.boards';
import { site } from '../../live/store';
import type { About } from '../resolve';

/** What a tile is given: its part of the file, the pool of a board of one pool, and that it hangs on a wall, where nothing leads anywhere. */
export interface TileProps { tile: TileView; pool: string | null; wall: boolean }

export const aboutOf = (p: TileProps): About => ({ circuits: site.value?.circuits ?? [], pool: p.pool });
