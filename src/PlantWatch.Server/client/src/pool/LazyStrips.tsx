import { lazyPart } from '../parts/lazyPart';
import type { StripsProps } from './Strips';

const strips = lazyPart<StripsProps>(() => import('./Strips'));

/** Fetches the charts while the browser has nothing else to do, so that they are there when a pool is opened. */
export function preloadStrips(): void {
  setTimeout(() => void strips.load().catch(() => {}), 3_000);
}

/** The strips of a page, loaded when they are wanted. */
export const LazyStrips = strips.Lazy;
