import { signal, type Signal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { get } from '../api/http';
import { onLive } from '../live/connection';

interface Held { answer: Signal<unknown>; failed: Signal<boolean>; users: number; load: () => void; stop: () => void }

const held = new Map<string, Held>();

function begin(path: string, every: number): Held {
  const answer = signal<unknown>(null), failed = signal(false);
  const load = () => void get<unknown>(path).then(a => { failed.value = !a.ok; if (a.ok) answer.value = a.value; });
  const timer = setInterval(load, every), deaf = onLive(load);
  load();
  return { answer, failed, users: 0, load, stop: () => { clearInterval(timer); deaf(); } };
}

function use(path: string, every: number): Held {
  let one = held.get(path);
  if (!one) held.set(path, one = begin(path, every));
  return one;
}

function leave(path: string, one: Held): void {
  if (--one.users > 0) return;
  one.stop();
  if (held.get(path) === one) held.delete(path);
}

export interface Shared<T> { data: T | null; failed: boolean; reload: () => void }

/** Like usePolled, but all parts of a page that ask for the same share one question; what was known stays while a path that moved on with the time is asked for. */
export function useShared<T>(path: string, every: number): Shared<T> {
  const kept = useRef<T | null>(null);
  const one = use(path, every);
  useEffect(() => { one.users++; return () => leave(path, one); }, [path, one]);
  const answer = one.answer.value as T | null;
  if (answer !== null) kept.current = answer;
  return { data: kept.current, failed: one.failed.value, reload: one.load };
}
