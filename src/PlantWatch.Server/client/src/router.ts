import { computed, signal } from '@preact/signals';

// The page stands behind the # of the address: the server needs to know nothing of it, and Back works.

const hash = signal(location.hash);
let moved = false;
addEventListener('hashchange', () => { moved = true; hash.value = location.hash; });

/** Whether somebody has gone from one page to another since this was opened. */
export const hasMoved = () => moved;

/** The parts of the address: ['pool', 'main']. Empty on the overview. */
export const route = computed<string[]>(() => {
  const path = hash.value.replace(/^#\/?/, '').split('?')[0] ?? '';
  return path.split('/').filter(Boolean).map(part => { try { return decodeURIComponent(part); } catch { return part; } });
});

export const link = (...parts: string[]) => '#/' + parts.map(encodeURIComponent).join('/');

export function go(...parts: string[]): void { location.hash = link(...parts); }
