import { describe, expect, it } from 'vitest';
import { followed, following, held, hour, panned, zoomed } from './window';

const now = 1_770_000_000_000;

describe('the window of the strips', () => {
  it('leaves now when panned back and follows again when panned home', () => {
    const back = panned(following(hour, now), -0.5, now);
    expect(back).toEqual({ from: now - 1.5 * hour, to: now - 0.5 * hour, follow: false });
    expect(panned(back, 3, now)).toEqual(following(hour, now));
  });
  it('keeps its end when it follows and is zoomed', () => expect(zoomed(following(hour, now), 2, 0.1, now)).toEqual(following(hour / 2, now)));
  it('zooms about the pointer otherwise', () => {
    const w = held(now - 10 * hour, now - 6 * hour, now);
    expect(zoomed(w, 2, 0.25, now)).toEqual({ from: now - 9.5 * hour, to: now - 7.5 * hour, follow: false });
  });
  it('is never empty', () => {
    const w = held(now - 10 * hour, now - 10 * hour + 1, now);
    expect(w.to - w.from).toBe(30_000);
  });
  it('moves on with the clock, but not for less than a pixel', () => {
    const w = following(hour, now);
    expect(followed(w, now + 500)).toBe(w);
    expect(followed(w, now + 5_000)).toEqual(following(hour, now + 5_000));
    const still = held(now - 10 * hour, now - 6 * hour, now);
    expect(followed(still, now + hour)).toBe(still);
  });
});
