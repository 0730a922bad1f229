import { signal, type Signal } from '@preact/signals';

/** The time that all strips of a page show, Unix milliseconds. While it follows, its end is now. */
export interface Shown { from: number; to: number; follow: boolean }

export const minute = 60_000, hour = 60 * minute, day = 24 * hour;
export const spans = { hour, six_hours: 6 * hour, day, week: 7 * day, month: 30 * day, year: 365 * day, five_years: 5 * 365 * day } as const;
export type SpanName = keyof typeof spans;

const least = 30_000, most = 5 * 365 * day;

export const following = (span: number, now: number): Shown => ({ from: now - span, to: now, follow: true });

/** Keeps a window inside what can be shown: not ahead of now, not shorter than a few readings. A window that reaches now follows it. */
export function held(from: number, to: number, now: number): Shown {
  const span = Math.min(most, Math.max(least, to - from));
  const end = to - from < span ? (from + to + span) / 2 : to;
  return end >= now - span * 0.005 ? following(span, now) : { from: end - span, to: end, follow: false };
}

/** Moves by a share of the span; positive is later. */
export function panned(w: Shown, share: number, now: number): Shown {
  const by = (w.to - w.from) * share;
  return held(w.from + by, w.to + by, now);
}

/** Zooms by a factor (2 shows half the time) about a place given as a share of the window; a window that follows keeps its end. */
export function zoomed(w: Shown, factor: number, share: number, now: number): Shown {
  const about = w.follow ? w.to : w.from + (w.to - w.from) * share;
  return held(about - (about - w.from) / factor, about + (w.to - about) / factor, now);
}

/** Moves a following window on with the clock, at most once a pixel. */
export function followed(w: Shown, now: number): Shown {
  const step = Math.max(1_000, (w.to - w.from) / 1_200);
  return w.follow && now - w.to >= step ? following(w.to - w.from, now) : w;
}

export const shownSignal = (now: number): Signal<Shown> => signal(following(spans.six_hours, now));
