import type { BoardView } from '../contract.boards';
import { site } from '../live/store';
import { go, link, route } from '../router';
import { words } from '../words';
import { Problems } from './Problems';
import { chosenPool } from './resolve';
import { Tile } from './Tile';
import { useBoard } from './useBoard';

const w = words.boards;

function Choice({ board, pool }: { board: BoardView; pool: string | null }) {
  const pools = (site.value?.circuits ?? []).flatMap(c => c.pools);
  if (pools.length === 0) return null;
  return (
    <label class="board-choice"><span class="label">{w.pool}</span>
      <select value={pool ?? ''} data-testid="board-pool" onChange={e => go('board', board.id, e.currentTarget.value)}>{pools.map(p => <option key={p.id} value={p.id}>{p.name}</option>)}</select></label>
  );
}

function Drawn({ board, failed }: { board: BoardView; failed: boolean }) {
  const pool = board.onePool ? chosenPool(site.value?.circuits ?? [], route.value[2]) : null;
  return (
    <div class="board-page" data-testid="board" data-board={board.id} data-version={board.version}>
      <div class="board-head">
        <div><h1>{board.title}</h1>{board.note && <p class="hint">{board.note}</p>}</div>
        {board.onePool && <Choice board={board} pool={pool} />}
        <div class="inline"><a class="button" href={link(...['wall', board.id, ...(pool && board.onePool ? [pool] : [])])} data-testid="to-wall">{w.toWall}</a><a class="button quiet" href={link('boards')}>{w.all}</a></div>
      </div>
      {failed && <p class="notice" role="status">{words.error.unreachable}</p>}
      <Problems board={board} />
      <div class="board"><div class="board-grid">{board.tiles.map((t, n) => <Tile key={`${n} ${t.show} ${t.hours} ${pool}`} n={n} tile={t} pool={pool} wall={false} />)}</div></div>
    </div>
  );
}

/** One board, in tiles that flow in the order of its file. */
export function BoardPage({ id }: { id: string }) {
  const { data, failed, problem } = useBoard(id);
  if (data && problem?.status !== 404) return <Drawn board={data} failed={failed} />;
  return <div class="empty"><h1>{problem ? w.noSuch : failed ? words.error.unreachable : words.loading}</h1><p><a class="line-link" href={link('boards')}>{w.all}</a></p></div>;
}
