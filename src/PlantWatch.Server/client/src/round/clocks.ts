import { effect } from '@preact/signals';
import { recall, remember } from '../api/kept';
import type { Measurand, TestMethod } from '../contract';
import { now } from '../live/clock';
import { play } from '../sound/speaker';
import { ready } from '../sound/tones';
import { guideOf } from './guides';
import { phaseOf, running, type Phase } from './round';
import { round } from './store';

/** 2:05 */
export const clockText = (seconds: number) => `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;

const key = (m: Measurand, method: TestMethod) => `stand.${m}.${method}`;

/** Standing time of a test: the kit's as somebody set it on this device, else the usual one. */
export const standOf = (m: Measurand, method: TestMethod): number => Number(recall(key(m, method)) ?? guideOf(m, method).stand ?? 0);
export const setStand = (m: Measurand, method: TestMethod, seconds: number) => { remember(key(m, method), String(Math.max(15, Math.min(1800, seconds)))); };

let watching = false;
const before = new Map<string, Phase['kind']>();

/** Says by a tone and a shake that a test has stood long enough, and once more when its window ends. A tone needs the browser's leave, which pressing the clock's button gives. */
export function watchClocks(): void {
  if (watching) return;
  watching = true;
  effect(() => {
    for (const t of running(round.value)) {
      const id = `${t.poolId} ${t.m} ${t.from}`, kind = phaseOf(t, now.value).kind, was = before.get(id);
      before.set(id, kind);
      if (was === undefined || was === kind) continue;
      play(ready);
      navigator.vibrate?.([200, 100, 200]);
    }
  });
}
