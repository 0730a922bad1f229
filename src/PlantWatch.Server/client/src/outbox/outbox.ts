// What was typed and not yet answered. Each item has a key of its own, so that two open pages never overwrite each other,
// and a refused item stands aside with its reason and holds up nobody.

import type { Problem } from '../contract';

export type Outcome<A> =
  | { kind: 'answered'; answer: A }
  | { kind: 'refused'; problem: Problem }
  | { kind: 'unreachable' };

export interface Item<R> { id: string; request: R; madeAt: number; refusal: Problem | null }

export interface Shelf {
  keys(): string[];
  get(key: string): string | null;
  set(key: string, value: string): void;
  remove(key: string): void;
}

/** Room for what is typed on a round, in characters: a hundred checks. */
const wantedRoom = 100_000;

/** Whether the browser would still keep something: to be said before somebody relies on it. */
export function roomLeft(shelf: Shelf): boolean {
  try {
    shelf.set('plantwatch.room', ' '.repeat(wantedRoom));
    return true;
  } catch {
    return false;
  } finally {
    shelf.remove('plantwatch.room');
  }
}

export class Outbox<R, A> {
  private sending: Promise<number> | null = null;

  constructor(
    private readonly prefix: string,
    private readonly shelf: Shelf,
    private readonly send: (id: string, request: R) => Promise<Outcome<A>>,
    private readonly changed: () => void,
    private readonly answered: (id: string, outcome: Outcome<A>) => void,
    private readonly alone: (work: () => Promise<number>) => Promise<number> = work => work()) {}

  /** Everything kept, oldest first. An unreadable item is left where it is: it is somebody's work. */
  items(): Item<R>[] {
    const found: Item<R>[] = [];
    for (const key of this.shelf.keys()) {
      if (!key.startsWith(this.prefix)) continue;
      try {
        const item = JSON.parse(this.shelf.get(key) ?? '') as Item<R>;
        if (item && item.id) found.push(item);
      } catch { /* left in place */ }
    }
    return found.sort((a, b) => a.madeAt - b.madeAt || (a.id < b.id ? -1 : 1));
  }

  /** Keeps an item. Throws when the browser would not keep it, so that the form holds on to what was typed. */
  put(id: string, request: R, madeAt: number): void {
    this.write({ id, request, madeAt, refusal: null });
  }

  drop(id: string): void {
    this.shelf.remove(this.prefix + id);
    this.changed();
  }

  /** Tries every waiting item once, refused ones apart. Returns how many still wait. Calls that overlap share one round. */
  flush(): Promise<number> {
    this.sending ??= Promise.resolve().then(() => this.alone(() => this.round())).finally(() => { this.sending = null; });
    return this.sending;
  }

  private async round(): Promise<number> {
    let waiting = 0;
    const tried = new Set<string>();
    // Looked up anew after each, so that what is put in while a round runs goes out with it.
    for (let item = this.next(tried); item; item = this.next(tried)) {
      tried.add(item.id);
      const outcome = await this.send(item.id, item.request).catch((): Outcome<A> => ({ kind: 'unreachable' }));
      if (outcome.kind === 'answered') this.drop(item.id);
      else if (outcome.kind === 'refused') this.setAside(item, outcome.problem);
      else waiting++;
      this.answered(item.id, outcome);
    }
    return waiting;
  }

  private next(tried: Set<string>): Item<R> | undefined {
    return this.items().find(i => i.refusal === null && !tried.has(i.id));
  }

  // A full device has no room for the reason: the item waits on, is tried again another time, and holds up nobody.
  private setAside(item: Item<R>, problem: Problem): void {
    try { this.write({ ...item, refusal: problem }); } catch { /* no room */ }
  }

  private write(item: Item<R>): void {
    this.shelf.set(this.prefix + item.id, JSON.stringify(item));
    this.changed();
  }
}
