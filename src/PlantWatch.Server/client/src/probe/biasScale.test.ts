import { describe, expect, it } from 'vitest';
import { biasRuns, biasScale, dayTicks } from './biasScale';

const day = 86_400_000;
const iso = (d: number) => new Date(d * day).toISOString();
const point = (d: number, value: number) => ({ checkId: String(d), at: iso(d), value, u: 0.04, doubted: false });
const work = (d: number, status: string) => ({ holdsFrom: iso(d), status }) as never;

describe('the curve of the bias', () => {
  it('is parted where the probe was worked on, and nowhere else', () => {
    const { runs, works } = biasRuns({ bias: [point(1, 0.1), point(2, 0.2), point(4, 0)], calibrations: [work(3, 'approved'), work(1.5, 'rejected'), { ...(work(1.6, 'approved') as object), kind: 'verification' } as never] }, 0);
    expect(runs.map(r => r.length)).toEqual([2, 1]);
    expect(works).toEqual([3 * day]);
  });
  it('always shows the limit of maintenance', () => expect(biasScale([{ t: 0, value: 0.01, u: 0.02, doubted: false }], [], 0.15, 0.3).reach).toBeGreaterThan(0.15));
  it('shows that of specification once the bias comes near it', () => expect(biasScale([{ t: 0, value: 0.24, u: 0.04, doubted: false }], [], 0.15, 0.3).reach).toBeGreaterThan(0.3));
  it('has an axis even for one check', () => {
    const s = biasScale([{ t: 5, value: 0, u: 0.1, doubted: false }], [], 0.15, 0.3);
    expect(s.to).toBeGreaterThan(s.from);
  });
  it('keeps its days few and round', () => {
    const ticks = dayTicks(0, 90 * day, 6);
    expect(ticks.length).toBeLessThanOrEqual(8);
    expect(ticks.every(t => t % day === 0)).toBe(true);
  });
});
