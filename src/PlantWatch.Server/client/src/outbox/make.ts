import { signal, type Signal } from '@preact/signals';
import { put } from '../api/http';
import { wait } from '../live/backoff';
import { onLive } from '../live/connection';
import { Outbox, type Item, type Outcome, type Shelf } from './outbox';

export const browser: Shelf = {
  keys: () => { try { return Object.keys(localStorage); } catch { return []; } },
  get: key => { try { return localStorage.getItem(key); } catch { return null; } },
  set: (key, value) => localStorage.setItem(key, value),
  remove: key => { try { localStorage.removeItem(key); } catch { /* denied */ } },
};

export interface Kept<R, A> {
  box: Outbox<R, A>;
  /** What waits or was refused. */
  kept: Signal<Item<R>[]>;
  /** What became of each item since this page was opened, whichever tab sent it. */
  outcomes: Signal<ReadonlyMap<string, Outcome<A>>>;
  send: (id: string, request: R) => Promise<Outcome<A>>;
  flush: () => Promise<void>;
  start: () => void;
}

/** Of several tabs one sends. Where a browser has no locks each does: the server keeps once what comes twice. */
const alone = (name: string) => <T>(work: () => Promise<T>): Promise<T> => (navigator.locks ? navigator.locks.request(name, work) as Promise<T> : work());

/**
 * An outbox of the browser for one kind of thing.
 * @param prefix of its keys; items of earlier versions of the page lie there too.
 * @param path where it is put, by its id.
 * @param idOf the id in an answer: a page of somebody else's gateway has none.
 */
export function makeOutbox<R, A>(prefix: string, path: string, idOf: (answer: A) => string | undefined): Kept<R, A> {
  const kept = signal<Item<R>[]>([]);
  const outcomes = signal<ReadonlyMap<string, Outcome<A>>>(new Map());
  const heard = (id: string, outcome: Outcome<A>) => { outcomes.value = new Map(outcomes.value).set(id, outcome); };
  const between = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel(prefix);

  async function send(id: string, request: R): Promise<Outcome<A>> {
    const answer = await put<A>(`${path}/${id}`, request);
    if (answer.ok) return answer.value && idOf(answer.value)?.toLowerCase() === id ? { kind: 'answered', answer: answer.value } : { kind: 'unreachable' };
    return answer.problem ? { kind: 'refused', problem: answer.problem } : { kind: 'unreachable' };
  }

  const box: Outbox<R, A> = new Outbox<R, A>(prefix, browser, send, read, (id, outcome) => { heard(id, outcome); between?.postMessage({ id, outcome }); }, alone(prefix));
  function read(): void { kept.value = box.items(); }

  let tries = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;

  /** Sends what waits; while something still does, tries again by itself. */
  async function flush(): Promise<void> {
    clearTimeout(timer);
    const waiting = await box.flush();
    if (waiting === 0) { tries = 0; return; }
    timer = setTimeout(() => void flush(), Math.max(1_000, wait(tries++) * 3));
  }

  function start(): void {
    read();
    if (between) between.onmessage = e => { heard(e.data.id, e.data.outcome); read(); };
    addEventListener('storage', read);
    const again = () => { tries = 0; void flush(); };
    addEventListener('online', again);
    onLive(again);
    if (kept.value.length > 0) void flush();
  }

  return { box, kept, outcomes, send, flush, start };
}
