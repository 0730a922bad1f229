import type { HandoverLineView } from '../contract.handover';
import { words } from '../words';

const w = words.handover;

/** Where a line stands, in the words that the pages use for its part. */
function stateOf({ part, state }: HandoverLineView): string {
  const own = w.states[state];
  if (own) return own;
  if (part === 'pool') return words.poolState.states[state as keyof typeof words.poolState.states] ?? state;
  if (part === 'job') return words.jobs.state[state as keyof typeof words.jobs.state] ?? state;
  return words.alarmState[state as keyof typeof words.alarmState] ?? state;
}

/** Lines of a handover, each with what it did since the last signature. */
export function Lines({ lines }: { lines: HandoverLineView[] }) {
  return (
    <ul class="handover-list">{lines.map(l => (
      <li key={l.circuit + l.part + l.key + l.move} data-testid={`line-${l.part}`} data-move={l.move}>
        <span>{w.moves[l.move] && <><span class="label">{w.moves[l.move]}</span> </>}<span class="hint">{w.parts[l.part]}:</span> <b>{l.title ?? l.subjectName}</b>{l.title && `, ${l.subjectName}`}: {stateOf(l)}</span>
        {l.text && <span>{l.text}</span>}{l.said && <span class="hint">{l.said}</span>}
      </li>))}</ul>
  );
}
