import { describe, expect, it } from 'vitest';
import { seriesQuestion } from './seriesAhead';
import { day, following, hour } from './window';

const now = Date.parse('2026-05-04T12:00:00Z');

describe('what is asked for a window', () => {
  it('is the same for the same window a moment later, so that what was asked ahead is found', () =>
    expect(seriesQuestion('ph', following(day, now + 1_000), 800, now + 1_000)).toBe(seriesQuestion('ph', following(day, now + 5_000), 800, now + 5_000)));
  it('reaches a quarter beyond both ends, but hardly beyond now', () => {
    const q = new URLSearchParams(seriesQuestion('ph', following(hour, now), 800, now));
    expect(Date.parse(q.get('from')!)).toBeLessThanOrEqual(now - 1.25 * hour);
    expect(Date.parse(q.get('to')!)).toBeLessThanOrEqual(now + 2 * 60_000);
  });
  it('asks for as many points as the window has pixels', () => expect(Number(new URLSearchParams(seriesQuestion('ph', { from: now - 10 * hour, to: now - 9 * hour, follow: false }, 800, now)).get('width'))).toBeCloseTo(1200, -1));
});
