import { signal } from '@preact/signals';

/** Whether the screen is kept from going dark: held, not granted, or a browser that cannot. */
export const awake = signal<'held' | 'refused' | 'cannot'>('cannot');

/** Asks for a lit screen for as long as it is wanted; the browser lets go of it whenever the page is hidden. Returns how to stop. */
export function keepAwake(): () => void {
  let lock: WakeLockSentinel | null = null, over = false;
  const ask = async () => {
    if (!('wakeLock' in navigator)) { awake.value = 'cannot'; return; }
    if (over || document.visibilityState !== 'visible' || (lock && !lock.released)) return;
    try {
      lock = await navigator.wakeLock.request('screen');
      if (over) { void lock.release(); return; }
      awake.value = 'held';
      lock.addEventListener('release', () => { awake.value = 'refused'; });
    } catch { awake.value = 'refused'; }
  };
  const back = () => void ask();
  void ask();
  document.addEventListener('visibilitychange', back);
  // Refused for an empty battery or a dimmed screen, it may be granted later.
  const timer = setInterval(back, 60_000);
  return () => { over = true; clearInterval(timer); document.removeEventListener('visibilitychange', back); void lock?.release(); };
}
