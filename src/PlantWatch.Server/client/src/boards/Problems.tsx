import type { BoardView } from '../contract.boards';
import { WarnGlyph } from '../parts/Glyph';
import { words } from '../words';

const w = words.boards;

/** What is wrong with the file of a board: where, and what would be right. */
export function Problems({ board }: { board: BoardView }) {
  if (board.errors.length === 0) return null;
  return (
    <div class="notice board-errors" role="status" data-testid="board-errors">
      <p class="mark"><WarnGlyph /><b>{board.tiles.length > 0 ? w.lastGood : w.neverGood}</b></p>
      <ul class="plain">{board.errors.map((e, i) => <li key={i}><b>{w.at(e.file, e.line)}</b>{e.key && <> <code>{e.key}</code></>}: {e.message}</li>)}</ul>
    </div>
  );
}
