import { signal } from '@preact/signals';

/** It is this tab of the browser that sounds. */
export const turn = signal(false);

let leave: (() => void) | null = null;
let waits = false;

/** Asks for the turn: of several tabs one sounds, and when it is closed the next. Where a browser has no locks every tab sounds: twice is better than not at all. */
export function takeTurn(): void {
  if (waits) return;
  waits = true;
  if (!navigator.locks) { turn.value = true; return; }
  void navigator.locks.request('plantwatch.sound', () => new Promise<void>(done => {
    // Given up while it was waited for.
    if (!waits) return done();
    turn.value = true;
    leave = done;
  })).catch(() => { turn.value = waits; });
}

export function giveUpTurn(): void {
  waits = false;
  turn.value = false;
  leave?.();
  leave = null;
}
