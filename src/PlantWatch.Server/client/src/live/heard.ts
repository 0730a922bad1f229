import { signal } from '@preact/signals';
import type { CircuitView } from '../contract';
import { fromShelf, shelve } from '../api/shelf';
import { serverNow } from './clock';
import { life, onLive } from './connection';
import { circuits, tookCircuit } from './store';

// The last state of the plant, kept on the device: a page that opens without a server shows it as what it is.

interface Heard { at: number; circuits: CircuitView[] }

const every = 10_000;

/** When what stands on the page was last heard, server time in Unix milliseconds; null as soon as the server has spoken. */
export const asHeard = signal<number | null>(null);

function keep(): void {
  if (life.peek().state === 'live' && circuits.peek().size > 0) void shelve('heard', { at: serverNow(), circuits: [...circuits.peek().values()] } satisfies Heard);
}

async function bring(): Promise<void> {
  const heard = await fromShelf<Heard>('heard');
  if (!heard || life.peek().state === 'live' || circuits.peek().size > 0) return;
  asHeard.value = heard.at;
  for (const view of heard.circuits) tookCircuit(view);
}

export function startHeard(): void {
  void bring();
  // Soon after the first picture too: a phone may be put away at once.
  onLive(() => { asHeard.value = null; setTimeout(keep, 1_500); });
  setInterval(keep, every);
  // A phone that is put away may never come back to this page.
  document.addEventListener('visibilitychange', () => { if (document.visibilityState === 'hidden') keep(); });
  addEventListener('pagehide', keep);
}
