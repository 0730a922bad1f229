import { signal } from '@preact/signals';
import type { CheckAnswer, CheckRequest } from '../contract';
import { put } from '../api/http';
import { wait } from '../live/backoff';
import { onLive } from '../live/connection';
import { Outbox, type Item, type Outcome, type Shelf } from './outbox';

export const browser: Shelf = {
  keys: () => { try { return Object.keys(localStorage); } catch { return []; } },
  get: key => { try { return localStorage.getItem(key); } catch { return null; } },
  set: (key, value) => localStorage.setItem(key, value),
  remove: key => { try { localStorage.removeItem(key); } catch { /* denied */ } },
};

export type CheckItem = Item<CheckRequest>;
export type CheckOutcome = Outcome<CheckAnswer>;

export async function sendCheck(id: string, request: CheckRequest): Promise<CheckOutcome> {
  const answer = await put<CheckAnswer>('/checks/' + id, request);
  if (answer.ok) return answer.value?.check?.id?.toLowerCase() === id ? { kind: 'answered', answer: answer.value } : { kind: 'unreachable' };
  return answer.problem ? { kind: 'refused', problem: answer.problem } : { kind: 'unreachable' };
}

/** Checks that wait or were refused. */
export const keptChecks = signal<CheckItem[]>([]);

/** What became of each check sent from this page. */
export const outcomes = signal<ReadonlyMap<string, CheckOutcome>>(new Map());

export const checks = new Outbox<CheckRequest, CheckAnswer>(
  'plantwatch.outbox.', browser, sendCheck, read,
  (id, outcome) => { outcomes.value = new Map(outcomes.value).set(id, outcome); });

function read(): void { keptChecks.value = checks.items(); }

let tries = 0;
let timer: ReturnType<typeof setTimeout> | undefined;

/** Sends what waits; while something still does, tries again by itself. */
export async function flushChecks(): Promise<void> {
  clearTimeout(timer);
  const waiting = await checks.flush();
  if (waiting === 0) { tries = 0; return; }
  timer = setTimeout(() => void flushChecks(), Math.max(1_000, wait(tries++) * 3));
}

export function startOutbox(): void {
  read();
  addEventListener('storage', read);
  addEventListener('online', () => { tries = 0; void flushChecks(); });
  onLive(() => { tries = 0; void flushChecks(); });
  if (keptChecks.value.length > 0) void flushChecks();
}
