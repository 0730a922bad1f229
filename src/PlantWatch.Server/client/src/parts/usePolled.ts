import { useEffect, useState } from 'preact/hooks';
import { get } from '../api/http';
import type { Problem } from '../contract';
import { onLive } from '../live/connection';

export interface Polled<T> { data: T | null; failed: boolean; problem: Problem | null; reload: () => void }

/** Fetches a path, again after the page was away from the server, and every so often when asked. Keeps the last data when a later try fails. */
export function usePolled<T>(path: string | null, every?: number): Polled<T> {
  const [held, hold] = useState<{ path: string | null; data: T | null; failed: boolean; problem: Problem | null }>({ path, data: null, failed: false, problem: null });
  const [round, setRound] = useState(0);
  const reload = () => setRound(n => n + 1);
  useEffect(() => {
    if (path === null) return;
    let gone = false;
    const load = async () => {
      const answer = await get<T>(path);
      if (gone) return;
      hold(h => ({
        path, failed: !answer.ok, problem: answer.ok ? null : answer.problem,
        data: answer.ok ? answer.value : h.path === path ? h.data : null,
      }));
    };
    void load();
    const stop = onLive(() => void load());
    const timer = every ? setInterval(() => void load(), every) : undefined;
    return () => { gone = true; stop(); clearInterval(timer); };
  }, [path, every, round]);
  const mine = held.path === path;
  return { data: mine ? held.data : null, failed: mine && held.failed, problem: mine ? held.problem : null, reload };
}
