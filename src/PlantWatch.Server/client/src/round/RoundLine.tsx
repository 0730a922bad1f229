import { poolViews } from '../live/store';
import { words } from '../words';
import { round } from './store';

const w = words.round;

/** On the overview: the way to what is due, or back to a round that somebody left. */
export function RoundLine() {
  const due = [...poolViews.value.values()].filter(p => p.due.length > 0).length;
  if (round.value === null && due === 0) return null;
  return <p class="round-line"><a class="button" href="#/round" data-testid="round-line">{round.value ? `${w.unfinished} (${round.value.who})` : w.toWalk(due)}</a></p>;
}
