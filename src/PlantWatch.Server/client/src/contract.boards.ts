// Boards, as the server's Contracts.Board.cs writes them.
import type { RecordGroup } from './contract.record';
import type { Measurand, Priority } from './contract.words';

export type BoardReader = 'engineer' | 'operator' | 'maintenance' | 'manager';
export type TileKind = 'pools' | 'readout' | 'strip' | 'balance' | 'tests' | 'alarms' | 'due' | 'pumps' | 'probes' | 'trust' | 'jobs' | 'notes' | 'clock';
export type TileRoom = 'narrow' | 'wide' | 'full';
export type WallSize = 'usual' | 'smaller' | 'larger';

/** A board in a list; `for` is null where it never was good. */
export interface BoardLine { id: string; version: string; title: string; for: BoardReader | null; note: string | null; own: boolean; problems: number }
export interface BoardView {
  id: string; version: string; title: string; for: BoardReader | null; note: string | null; own: boolean; onePool: boolean; wall: WallView; tiles: TileView[]; errors: BoardErrorView[];
}
/** Times are of the site's clock, such as 21:30. */
export interface WallView { pageSeconds: number; darkFrom: string | null; darkUntil: string | null; size: WallSize }
/** `of` and `measurands` empty mean all; `problems` say what it names that the plant has not. */
export interface TileView {
  show: TileKind; title: string | null; of: string[]; measurands: Measurand[]; room: TileRoom; hours: number; limits: boolean; checks: boolean; raw: boolean;
  aheadHours: number; atLeast: Priority; most: number; about: RecordGroup; problems: string[];
}
export interface BoardErrorView { file: string; line: number; key: string; message: string }
