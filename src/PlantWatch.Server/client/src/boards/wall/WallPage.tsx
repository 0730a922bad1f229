import { useEffect } from 'preact/hooks';
import { AlarmBar } from '../../alarms/AlarmBar';
import type { BoardView, WallSize } from '../../contract.boards';
import { now } from '../../live/clock';
import { life } from '../../live/connection';
import { site, zone } from '../../live/store';
import { lendTheme } from '../../parts/theme';
import { go, route } from '../../router';
import { words } from '../../words';
import { chosenPool } from '../resolve';
import { Tile } from '../Tile';
import { useBoard } from '../useBoard';
import { keepAwake } from './awake';
import type { Span } from './fit';
import { isNight } from './night';
import { renewItself } from './renewal';
import { useScreenfuls } from './useScreenfuls';
import { useTurning } from './useTurning';
import { WallDead, WallFoot, WallHead, WallTrouble } from './WallParts';

/** The letters of the whole page grow: what is drawn on canvases measures itself by them. */
function useWallSize(size: WallSize): void {
  useEffect(() => {
    const root = document.documentElement.classList;
    root.add('wall-on', `wall-${size}`);
    return () => root.remove('wall-on', `wall-${size}`);
  }, [size]);
}

function useNight(board: BoardView): void {
  const night = isNight(board.wall.darkFrom, board.wall.darkUntil, zone.value, Math.floor(now.value / 60_000) * 60_000);
  useEffect(() => { lendTheme(night ? 'dark' : null); return () => lendTheme(null); }, [night]);
}

/** The way out is a key, so that nobody leaves by a touch. */
function useEscape(board: string): void {
  useEffect(() => {
    const key = (e: KeyboardEvent) => { if (e.key === 'Escape') go('board', board, ...route.peek().slice(2)); };
    addEventListener('keydown', key);
    return () => removeEventListener('keydown', key);
  }, [board]);
}

/** Only what is whole on this page is seen of a tile. */
const cutTo = (box: Span | undefined, seen: Span | undefined) => ({ clipPath: box && seen ? `inset(${Math.max(0, seen.top - box.top)}px 0 ${Math.max(0, box.bottom - seen.bottom)}px 0)` : 'none' });

function Wall({ board, gone }: { board: BoardView; gone: boolean }) {
  const pool = board.onePool ? chosenPool(site.value?.circuits ?? [], route.value[2]) : null;
  const { view, flow, boxes, pages } = useScreenfuls(`${board.version} ${pool}`);
  const { page, held, hold } = useTurning(pages.length, board.wall.pageSeconds);
  useWallSize(board.wall.size);
  useNight(board);
  const here = pages[page], seen = new Set(here?.shown ?? board.tiles.map((_, i) => i));
  return (
    <div class={`wall frame ${life.value.state === 'live' ? '' : 'away'}`} data-testid="wall" data-board={board.id} data-version={board.version}>
      <WallHead title={board.title} />
      <WallDead />
      <AlarmBar plain />
      <WallTrouble board={board} gone={gone} />
      <main class="wall-main">
        <h1 class="sr">{board.title}</h1>
        <div class="wall-view" ref={view}><div class="board wall-flow" style={{ transform: `scale(${here?.scale ?? 1}) translateY(${-(here?.from ?? 0)}px)` }}><div class="board-grid" ref={flow}>
          {board.tiles.map((t, n) => <div key={`${n} ${t.show} ${t.hours} ${pool}`} class={`wall-slot t-${t.room} ${seen.has(n) ? '' : 'off'}`} style={cutTo(boxes[n], here?.seen[n])}><Tile n={n} tile={t} pool={pool} wall /></div>)}
        </div></div></div>
      </main>
      <WallFoot page={page} pages={pages.length} held={held} hold={hold} more={board.tiles.length - seen.size} />
    </div>
  );
}

/** A board on the wall of the plant room: no way to anywhere, readable from afar, and it goes on by itself whatever happens. */
export function WallPage({ id }: { id: string }) {
  const { data, failed, problem } = useBoard(id);
  useEscape(id);
  useEffect(() => {
    const stops = [keepAwake(), renewItself()];
    return () => { for (const stop of stops) stop(); };
  }, []);
  if (data) return <Wall board={data} gone={problem?.status === 404} />;
  return <main class="wall-none"><h1>{problem ? words.boards.noSuch : failed ? words.error.unreachable : words.loading}</h1><p>{words.boards.triesAgain}</p></main>;
}
