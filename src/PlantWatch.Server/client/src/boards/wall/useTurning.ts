import { useEffect, useState } from 'preact/hooks';
import { now } from '../../live/clock';

/** A page that somebody holds goes on by itself after so long: whoever held it has gone. */
const longestHold = 5 * 60_000;

/** Which of so many pages is shown: the next one every so often, unless held; keys turn it too. */
export function useTurning(count: number, seconds: number) {
  const [page, setPage] = useState(0);
  const [heldUntil, setHeldUntil] = useState<number | null>(null);
  const held = heldUntil !== null && now.value < heldUntil;
  const hold = () => setHeldUntil(held ? null : now.peek() + longestHold);
  useEffect(() => {
    if (held || count < 2) return;
    const timer = setInterval(() => setPage(p => p + 1), seconds * 1_000);
    return () => clearInterval(timer);
  }, [held, count, seconds]);
  useEffect(() => {
    const key = (e: KeyboardEvent) => {
      if (e.ctrlKey || e.metaKey || e.altKey || count < 2) return;
      if (e.key === 'ArrowRight' || e.key === 'PageDown') setPage(p => p + 1);
      else if (e.key === 'ArrowLeft' || e.key === 'PageUp') setPage(p => p + count - 1);
    };
    addEventListener('keydown', key);
    return () => removeEventListener('keydown', key);
  }, [count]);
  return { page: count === 0 ? 0 : page % count, held: held ? heldUntil : null, hold };
}
