import { signal } from '@preact/signals';
import { put } from '../api/http';
import type { GivenDoseRequest, GivenDoseView } from '../contract.dose';
import { wait } from '../live/backoff';
import { onLive } from '../live/connection';
import { browser } from './checks';
import { Outbox, type Item, type Outcome } from './outbox';

export type DoseOutcome = Outcome<GivenDoseView>;

async function send(id: string, request: GivenDoseRequest): Promise<DoseOutcome> {
  const answer = await put<GivenDoseView>('/doses/' + id, request);
  if (answer.ok) return answer.value?.dose?.id?.toLowerCase() === id ? { kind: 'answered', answer: answer.value } : { kind: 'unreachable' };
  return answer.problem ? { kind: 'refused', problem: answer.problem } : { kind: 'unreachable' };
}

/** Doses that wait or were refused. */
export const keptDoses = signal<Item<GivenDoseRequest>[]>([]);

/** What became of the newest one sent from this page. */
export const doseOutcome = signal<{ id: string; outcome: DoseOutcome } | null>(null);

export const doses = new Outbox<GivenDoseRequest, GivenDoseView>('plantwatch.doses.', browser, send, read, (id, outcome) => { doseOutcome.value = { id, outcome }; });

function read(): void { keptDoses.value = doses.items(); }

let tries = 0;
let timer: ReturnType<typeof setTimeout> | undefined;

/** Sends what waits; while something still does, tries again by itself. */
export async function flushDoses(): Promise<void> {
  clearTimeout(timer);
  if (await doses.flush() === 0) { tries = 0; return; }
  timer = setTimeout(() => void flushDoses(), Math.max(1_000, wait(tries++) * 3));
}

export function startDoses(): void {
  read();
  addEventListener('storage', read);
  onLive(() => { tries = 0; void flushDoses(); });
  if (keptDoses.value.length > 0) void flushDoses();
}
