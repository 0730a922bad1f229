import { computed, signal } from '@preact/signals';

// The server's clock as well as we know it: a tablet on the wall may be minutes off, and ages must not be.
let ahead = 0;

/** Server time now, Unix milliseconds, moved on every second. */
export const now = signal(Date.now());

/** The hour of that, counted from 1970: for what is asked for anew now and then, and not every second. */
export const thisHour = computed(() => Math.floor(now.value / 3_600_000));

export const serverNow = () => Date.now() + ahead;

export function heardServerTime(iso: string): void {
  const at = Date.parse(iso);
  if (!Number.isFinite(at)) return;
  const offset = at - Date.now();
  // A message is on its way for a moment; only a difference that people would see is taken over.
  if (Math.abs(offset - ahead) > 1_500) ahead = offset;
}

setInterval(() => { now.value = serverNow(); }, 1000);
