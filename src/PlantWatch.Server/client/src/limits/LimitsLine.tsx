import type { PoolView } from '../contract';
import { words } from '../words';

const w = words.limits;

/** What can be said of the limits of a pool: quiet, and never hidden while there are none in force. The plant's own are told only on its page. */
export function LimitsLine({ view, page }: { view: PoolView | undefined; page?: boolean }) {
  const limits = view?.limits;
  if (!limits || limits.word === 'in_force' || (limits.word === 'own_only' && !page)) return null;
  const text = limits.word === 'unconfirmed' ? w.poolWaits(limits.unconfirmed) : limits.word === 'none' ? w.poolNone : w.poolOwn;
  return <p class="limits-line"><a href="#/limits" data-testid={`limits-of-${view.id}`}>{text}</a></p>;
}
