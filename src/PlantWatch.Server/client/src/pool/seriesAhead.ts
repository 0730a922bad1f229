import { get, query, type Answer } from '../api/http';
import type { SeriesView } from '../contract';
import { following, spans, type Shown, type SpanName } from './window';

const margin = 0.25, fresh = 60_000;

/** The question for a window and a little around it. Its ends stand on a grid of a few pixels, so that the same window a moment later asks the same. */
export function seriesQuestion(probeId: string, w: Shown, width: number, now: number): string {
  const span = w.to - w.from, grid = Math.max(1_000, span / 240);
  const from = Math.floor((w.from - span * margin) / grid) * grid, to = Math.ceil(Math.min(now + 60_000, w.to + span * margin) / grid) * grid;
  return query({ probe: probeId, from: new Date(from).toISOString(), to: new Date(to).toISOString(), width: Math.max(50, Math.round(width * (to - from) / span)) });
}

const held = new Map<string, { at: number; answer: Promise<Answer<SeriesView>> }>();

/** What was asked for ahead, once and while it is fresh; null where nothing was. */
export function takeAhead(question: string, now: number): Promise<Answer<SeriesView>> | null {
  const found = held.get(question);
  held.delete(question);
  return found && now - found.at < fresh ? found.answer : null;
}

/** Asks ahead for the next wider span, which is what people look at next. Quietly: nothing waits for it. */
export function askAhead(probeId: string, w: Shown, width: number, now: number): void {
  const names = Object.keys(spans) as SpanName[], wider = names.find(n => spans[n] > (w.to - w.from) * 1.01);
  if (!w.follow || !wider) return;
  const question = seriesQuestion(probeId, following(spans[wider], now), width, now);
  if (held.has(question)) return;
  for (const [q, h] of held) if (now - h.at >= fresh) held.delete(q);
  const [first, ...rest] = question.slice(1).split('&');
  held.set(question, { at: now, answer: get<SeriesView>('/series?' + [...rest, first].join('&')) });
}
