import type { BoardLine } from '../contract.boards';
import { boards } from '../live/boards';
import { WarnGlyph } from '../parts/Glyph';
import { link } from '../router';
import { words } from '../words';

const w = words.boards;

function Line({ board: b }: { board: BoardLine }) {
  return (
    <li class="board-line" data-testid={`board-${b.id}`}>
      <p class="board-line-head"><b><a class="line-link" href={link('board', b.id)}>{b.title}</a></b>{b.for && <span class="hint">{w.for(w.readers[b.for])}</span>}{b.own && <span class="hint">{w.own}</span>}</p>
      {b.note && <p>{b.note}</p>}
      {b.problems > 0 && <p class="mark" data-testid={`problems-${b.id}`}><WarnGlyph /><b>{w.problems(b.problems)}</b></p>}
    </li>
  );
}

/** The boards there are: for whom, what for, and which have something wrong. */
export function BoardsPage() {
  return (
    <div class="narrow" data-testid="boards">
      <h1>{w.title}</h1>
      <section class="sheet card">
        <h2>{w.choose}</h2>
        {boards.value === null ? <p class="hint" role="status">{words.overview.waiting}</p> : boards.value.length === 0 ? <p class="hint">{w.none}</p>
          : <ul class="board-list">{boards.value.map(b => <Line key={b.id} board={b} />)}</ul>}
      </section>
      <section class="sheet card"><h2>{w.ownTitle}</h2><p>{w.ownHow}</p><p><code>dotnet run --project src/PlantWatch.Server -- check-board --plant "$PWD/plant.yaml" "$PWD/boards/my-board.board.yaml"</code></p></section>
    </div>
  );
}
