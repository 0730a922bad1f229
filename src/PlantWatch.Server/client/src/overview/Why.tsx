import type { PoolView } from '../contract';
import { words } from '../words';

/** The sentences behind the state of a pool, worst first. */
export function Why({ view, all }: { view: PoolView | undefined; all?: boolean }) {
  if (!view) return <p class="why">{words.overview.noState}</p>;
  const shown = all ? view.why : view.why.slice(0, 3);
  return (
    <ul class="why">
      {shown.map((w, i) => <li key={i}>{w.text}</li>)}
      {view.why.length > shown.length && <li>{words.overview.more(view.why.length - shown.length)}</li>}
      {view.bottomVisible === false && !view.why.some(w => w.code.includes('bottom')) && <li><b>{words.overview.notVisible}</b></li>}
    </ul>
  );
}
