const waiting: (() => void)[] = [];
let isRunning = false;

/** Does heavy work a task each, in order, so that a finger is answered in between. Gives what takes it back as long as it waits. */
export function inTurn(work: () => void): () => void {
  waiting.push(work);
  if (!isRunning) { isRunning = true; setTimeout(next); }
  return () => { const at = waiting.indexOf(work); if (at >= 0) waiting.splice(at, 1); };
}

function next(): void {
  const work = waiting.shift();
  if (!work) { isRunning = false; return; }
  // Before the work: whatever becomes of it, the next has its turn.
  setTimeout(next);
  work();
}
