import type { Measurand } from '../contract';
import { emptyDraft, type Draft } from '../check/draft';
import { combined } from '../format/chlorine';
import { resultOf } from '../check/build';
import { uuid7 } from '../format/uuid7';
import { guideOf } from './guides';

// A round as it is kept on the device: where it stands, what was typed, and since when. Every time is a number, so that a
// round that was left can say how old its sample is.

/** Standing time that runs, or the window to read in. */
export interface Timer { poolId: string; m: Measurand; from: number; stand: number; window: number | null }

/** One sample of one pool, and the tests made with it. */
export interface Stop {
  draft: Draft; what: Measurand[]; dueAt: number | null; overdue: boolean;
  /** Tests that were left out, and when the number of each was typed. */
  left: Measurand[]; readAt: Partial<Record<Measurand, number>>;
  /** When the reagent of each was in: what is read later than its window is told. */
  timers: Timer[];
  /** The check that was made of it, once there is one. */
  checkId: string | null;
}

export type Screen = 'sample' | 'around' | 'look' | 'answer' | Measurand;

/** Mending: one screen was gone back to from the look over all of it, which comes next again. */
export interface Round { id: string; who: string; begunAt: number; stops: Stop[]; at: number; screen: Screen; mending?: boolean }

export const newStop = (poolId: string, what: Measurand[], dueAt: number | null = null, overdue = false): Stop =>
  ({ draft: emptyDraft(poolId), what, dueAt, overdue, left: [], readAt: {}, timers: [], checkId: null });

export const newRound = (who: string, stops: Stop[], now: number): Round => ({ id: uuid7(now), who: who.trim(), begunAt: now, stops, at: 0, screen: 'sample' });

/** Sampling, each test, a look around, all of it once more, what became of it. */
export const screensOf = (stop: Stop): Screen[] => ['sample', ...stop.what, 'around', 'look', 'answer'];

export const nextScreen = (stop: Stop, screen: Screen, mending = false): Screen => {
  if (mending) return 'look';
  const all = screensOf(stop);
  return all[Math.min(all.indexOf(screen) + 1, all.length - 1)]!;
};

export const screenBefore = (stop: Stop, screen: Screen, mending = false): Screen | null => mending ? 'look' : screensOf(stop)[screensOf(stop).indexOf(screen) - 1] ?? null;

/** The round without the pool that it stands at, whose clocks nobody waits for any more: on to the next that is open; null when there is none. */
export function poolLeft(round: Round): Round | null {
  const stops = round.stops.filter((_, i) => i !== round.at), at = stops.findIndex((s, i) => i >= round.at && s.checkId === null);
  return at < 0 ? null : { ...round, stops, at, screen: 'sample' };
}

/** How long a standing sample may be tested: chlorine is lost to light, warmth and whatever it meets, and is tested at once (common practice); our choice is ten minutes, because a round with three tests takes eight. What keeps longer has an hour. */
export const sampleKeeps = (m: Measurand): number => (m === 'free_chlorine' || m === 'total_chlorine' || m === 'bromine' || m === 'ph' || m === 'temperature' ? 10 : 60) * 60_000;

/** Tests that are still to be made and for which the sample is too old. */
export const tooOld = (stop: Stop, now: number): Measurand[] =>
  stop.draft.whenExact === null || stop.checkId !== null ? [] : stop.what.filter(m => !stop.left.includes(m) && !stop.draft.rows[m]?.text && now - stop.draft.whenExact! > sampleKeeps(m));

/**
 * A fresh sample for what is still to be tested. What was read of the old one becomes a stop of its own, to be saved as the check that it is.
 * Free and total chlorine are of one water: with total still open, free is tested again too.
 */
export function sampledAgain(stop: Stop): { done: Stop | null; again: Stop } {
  const open = stop.what.filter(m => !stop.draft.rows[m]?.text && !stop.left.includes(m));
  const what = stop.what.filter(m => open.includes(m) || (m === 'free_chlorine' && open.includes('total_chlorine')));
  const again = { ...newStop(stop.draft.poolId, what, stop.dueAt, stop.overdue), draft: { ...emptyDraft(stop.draft.poolId), point: stop.draft.point, place: stop.draft.place } };
  const read = stop.what.filter(m => stop.draft.rows[m]?.text);
  return { done: read.length > 0 ? { ...stop, what: read } : null, again };
}

/** By how much the reading came after its window, ms; null while it did not, or nobody started the clock. */
export function lateBy(stop: Stop, m: Measurand): number | null {
  const timer = stop.timers.find(t => t.m === m), at = stop.readAt[m];
  if (!timer || timer.window === null || at === undefined) return null;
  const late = at - (timer.from + (timer.stand + timer.window) * 1000);
  return late > 0 ? late : null;
}

export type Phase = { kind: 'standing' | 'reading' | 'late' | 'done'; left: number };

/** Where a clock stands: still standing, to be read now, or past its window; seconds. */
export function phaseOf(t: Timer, now: number): Phase {
  // The page's clock moves by the second and may lie a little before the press.
  const gone = Math.max(0, now - t.from) / 1000;
  if (gone < t.stand) return { kind: 'standing', left: Math.ceil(t.stand - gone) };
  if (t.window === null) return { kind: 'done', left: 0 };
  const left = t.stand + t.window - gone;
  return left >= 0 ? { kind: 'reading', left: Math.ceil(left) } : { kind: 'late', left: Math.floor(-left) };
}

/** Clocks that somebody still waits for: their result is not typed and their test not left out. */
export const running = (round: Round | null): Timer[] => (round === null ? [] : round.stops.filter(s => s.checkId === null).flatMap(s => s.timers.filter(t => s.readAt[t.m] === undefined && !s.left.includes(t.m))));

export const startTimer = (stop: Stop, m: Measurand, now: number, stand: number): Stop => {
  const guide = guideOf(m, stop.draft.rows[m]?.method ?? 'photometer');
  return { ...stop, timers: [...stop.timers.filter(t => t.m !== m), { poolId: stop.draft.poolId, m, from: now, stand, window: guide.window }] };
};

export const combinedOf = (stop: Stop) => combined(resultOf(stop.draft, 'free_chlorine'), resultOf(stop.draft, 'total_chlorine'));
