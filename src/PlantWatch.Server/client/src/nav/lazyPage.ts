import type { ComponentType } from 'preact';
import { lazyPart } from '../parts/lazyPart';

const loaders: (() => Promise<unknown>)[] = [];

/** A page with a file of its own, so that the first picture does not wait for what nobody has asked for yet. */
export function lazyPage<M, P extends object>(bring: () => Promise<M>, of: (module: M) => ComponentType<P>): ComponentType<P> {
  const { Lazy, load } = lazyPart<P>(() => bring().then(m => ({ default: of(m) })));
  loaders.push(load);
  return Lazy;
}

/** Fetches the other pages while nobody waits, one after the other: a page must open when the signal is gone, too. */
export function preloadPages(): void {
  setTimeout(async () => { for (const load of loaders) await load().catch(() => {}); }, 3_000);
}
