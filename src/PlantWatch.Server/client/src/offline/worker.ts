import { signal } from '@preact/signals';
import { onLive } from '../live/connection';

/** Whether this device opens the pages without a server: not known yet, ready, or why not. */
export type Reach = 'starting' | 'ready' | 'insecure' | 'unsupported' | 'failed';
export const reach = signal<Reach>('starting');

/** A newer set of pages lies on the device and waits. */
export const newer = signal(false);

/** Looking for a newer set takes a request: not each time the page becomes live again. */
const lookEvery = 600_000;
/** A wall display is touched by nobody; after this long nobody is in the middle of anything either. */
const untouchedFor = 300_000;

let registration: ServiceWorkerRegistration | undefined;
let asked = false;
let touchedAt: number | null = null;
let lookedAt = 0;

/** Takes the newer set: the page loads anew. What was typed is kept on the device where its form keeps drafts; the others ask first. */
export function takeNewer(): void {
  asked = true;
  if (registration?.waiting) registration.waiting.postMessage('take');
  else location.reload();
}

function found(): void {
  if (registration?.waiting && navigator.serviceWorker.controller) newer.value = true;
  // Nobody has touched the page yet: it has only just been opened.
  if (newer.value && touchedAt === null && performance.now() < 10_000) takeNewer();
}

function watch(worker: ServiceWorker | null): void {
  worker?.addEventListener('statechange', () => { found(); if (worker.state === 'activated') reach.value = 'ready'; });
}

/** Looks whether the server has a newer set; `quietly` takes it. False where pages are not kept on the device, and somebody else has to look. */
export function lookForNewer(): boolean {
  if (reach.peek() !== 'ready') return false;
  look();
  return true;
}

function look(): void {
  if (!registration || Date.now() - lookedAt < lookEvery) return;
  lookedAt = Date.now();
  void registration.update().catch(() => { /* no server: later */ });
}

const nothingTyped = () => document.querySelector('form, textarea, dialog[open], [data-busy]') === null;

function quietly(): void {
  if (newer.value && (touchedAt === null || performance.now() - touchedAt > untouchedFor) && nothingTyped()) takeNewer();
}

export async function startWorker(): Promise<void> {
  if (!import.meta.env.PROD) return;
  if (!isSecureContext) { reach.value = 'insecure'; return; }
  if (!('serviceWorker' in navigator)) { reach.value = 'unsupported'; return; }
  for (const kind of ['pointerdown', 'keydown']) addEventListener(kind, () => { touchedAt = performance.now(); }, { capture: true, passive: true });
  // Taken by another tab: this one goes on with the set it has, and may follow.
  let controlled = navigator.serviceWorker.controller !== null;
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    if (asked) location.reload();
    else if (controlled) newer.value = true;
    controlled = true;
  });
  try {
    registration = await navigator.serviceWorker.register('/sw.js', { updateViaCache: 'none' });
  } catch { /* said below */ }
  if (!registration) { reach.value = 'failed'; return; }
  if (registration.active) reach.value = 'ready';
  watch(registration.installing);
  registration.addEventListener('updatefound', () => watch(registration?.installing ?? null));
  found();
  onLive(look);
  setInterval(quietly, 60_000);
  // What waits to be sent must not be the first thing that a full device throws away.
  void navigator.storage?.persist?.().catch(() => false);
}
