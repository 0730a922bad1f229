import type { BoardView } from '../../contract.boards';
import { span } from '../../format/age';
import { clock, clockSeconds, dayClock, dayOnly } from '../../format/zone';
import { isDead } from '../../live/dead';
import { now } from '../../live/clock';
import { life } from '../../live/connection';
import { asHeard } from '../../live/heard';
import { circuits, health, site, zone } from '../../live/store';
import { Age } from '../../parts/Age';
import { WarnGlyph } from '../../parts/Glyph';
import { words } from '../../words';
import { awake } from './awake';

const w = words.boards;

export function WallHead({ title }: { title: string }) {
  return (
    <header class="wall-head">
      <b class="wall-site">{site.value?.name ?? words.product}</b><span class="wall-title">{title}</span>
      <span class="hint">{dayOnly(now.value, zone.value)}</span><time class="wall-time" data-testid="wall-time">{clock(now.value, zone.value)}</time>
    </header>
  );
}

/** In letters that are seen from afar: nothing here is now, and since when. */
export function WallDead() {
  // What stands here may have been kept on the device: then it is as old as that.
  const kept = asHeard.value, since = kept ?? life.value.since, never = circuits.value.size === 0;
  if (!isDead()) return null;
  return (
    <div class="wall-dead" data-testid="wall-dead">
      <p role="alert"><b>{words.live.banner}</b> {never ? w.neverHeard : w.deadSince((now.value - since > 86_400_000 ? dayClock : clockSeconds)(since, zone.value))}</p>
      <p class="wall-dead-age" aria-hidden="true">{span(now.value - since)}</p>
    </div>
  );
}

/** What is wrong with the board or the plant file, in a line: whoever mends it reads the rest on the page of the board. */
export function WallTrouble({ board, gone }: { board: BoardView; gone: boolean }) {
  const plant = health.value?.plantFile.length ?? 0, tiles = board.tiles.reduce((sum, t) => sum + t.problems.length, 0);
  const said = [gone ? w.gone : '', board.errors[0] ? `${w.lastGood} ${w.at(board.errors[0].file, board.errors[0].line)}: ${board.errors[0].message}` : '', tiles > 0 ? w.problems(tiles) : '', plant > 0 ? words.live.plantFile : ''].filter(Boolean);
  return said.length === 0 ? null : <p class="wall-trouble mark" role="status" data-testid="wall-trouble"><WarnGlyph /><span>{said.join(' ')}</span></p>;
}

export function WallFoot({ page, pages, held, hold, more }: { page: number; pages: number; held: number | null; hold: () => void; more: number }) {
  const state = life.value.state;
  return (
    <footer class="wall-foot">
      <span class={`life l-${state}`} data-testid="life">{state === 'live' ? words.live.live : state === 'lost' ? words.live.not : words.live.connecting}</span>
      {health.value && <span class="hint">{w.heard} <Age at={health.value.at} /></span>}
      {awake.value !== 'held' && <span class="hint" data-testid="wall-awake" data-state={awake.value}>{w.mayGoDark}</span>}
      {pages > 1 && <span class="wall-pages" data-testid="wall-pages">{w.pageOf(page + 1, pages)}, {w.moreTiles(more)}</span>}
      {pages > 1 && <button type="button" class="slim" data-testid="wall-hold" aria-pressed={held !== null} onClick={hold}>{held === null ? w.hold : w.heldUntil(clock(held, zone.value))}</button>}
    </footer>
  );
}
