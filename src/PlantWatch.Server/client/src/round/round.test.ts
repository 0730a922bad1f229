import { describe, expect, it } from 'vitest';
import type { Measurand, PoolInfo, PoolView } from '../contract';
import { dueByPlan, dutyOf, inWalkingOrder, testsOf, type Duty } from './due';
import { guideOf } from './guides';
import { quietWords } from './plausible';
import { lateBy, newRound, newStop, nextScreen, phaseOf, poolLeft, running, sampledAgain, screensOf, startTimer, tooOld, type Stop } from './round';

const at = Date.UTC(2026, 5, 1, 6, 0), minute = 60_000;
const pool = (more: Partial<PoolInfo> = {}): PoolInfo => ({ id: 'main', name: 'Main', kind: 'swimming', setting: 'indoor', disinfectant: 'chlorine', secondary: [], volumeM3: 400, limits: [], duties: [{ what: ['free_chlorine', 'combined_chlorine', 'ph'], at: ['07:00:00', '12:00:00'] }], ...more });
const typed = (stop: Stop, m: Measurand, text: string, readAt = at): Stop => ({ ...stop, readAt: { ...stop.readAt, [m]: readAt }, draft: { ...stop.draft, rows: { ...stop.draft.rows, [m]: { text, bound: 'none', method: 'photometer', dilution: '' } } } });
const sampled = (stop: Stop, when = at): Stop => ({ ...stop, draft: { ...stop.draft, whenExact: when } });

describe('what a round takes in', () => {
  it('tests what goes off first and what keeps last, combined chlorine as free and total', () => {
    expect(testsOf(['calcium_hardness', 'ph', 'combined_chlorine', 'temperature'], 'chlorine')).toEqual(['temperature', 'free_chlorine', 'total_chlorine', 'ph', 'calcium_hardness']);
    expect(testsOf(['free_chlorine', 'combined_chlorine', 'ph'], 'bromine')).toEqual(['bromine', 'ph']);
  });
  it('walks what is overdue first, then what is due, each as the plant lists its pools', () => {
    const d = (poolId: string, what: Measurand[], overdue = false): Duty => ({ poolId, what, dueAt: at, overdue, byPlan: false });
    expect(inWalkingOrder([d('a', []), d('b', ['ph']), d('c', ['ph'], true), d('e', ['ph'])]).map(x => x.poolId)).toEqual(['c', 'b', 'e', 'a']);
  });
  it('is what the server said, or without it what the plan asks for since it was last heard', () => {
    const view = { due: [{ poolId: 'main', what: ['ph'], dueAt: new Date(at).toISOString(), overdue: false }] } as unknown as PoolView;
    expect(dutyOf(pool(), view, null, at, 'UTC')).toMatchObject({ what: ['ph'], byPlan: false });
    // Heard at 04:00, it is 06:30 now: the window of seven o'clock opened at six.
    const heard = Date.UTC(2026, 5, 1, 4, 0);
    expect(dutyOf(pool(), undefined, heard, Date.UTC(2026, 5, 1, 6, 30), 'UTC')).toMatchObject({ what: ['free_chlorine', 'total_chlorine', 'ph'], dueAt: Date.UTC(2026, 5, 1, 7, 0), overdue: false, byPlan: true });
    expect(dueByPlan(pool(), heard, Date.UTC(2026, 5, 1, 5, 50), 'UTC')).toEqual([]);
    expect(dueByPlan(pool(), heard, Date.UTC(2026, 5, 1, 8, 1), 'UTC')[0]!.overdue).toBe(true);
    // On the site's clock: seven in the morning in Berlin is five in UTC in June.
    expect(dueByPlan(pool(), Date.UTC(2026, 5, 1, 3, 0), Date.UTC(2026, 5, 1, 4, 30), 'Europe/Berlin')[0]!.dueAt).toBe(Date.UTC(2026, 5, 1, 5, 0));
  });
});

describe('a sample', () => {
  const stop = sampled(newStop('main', ['free_chlorine', 'total_chlorine', 'ph', 'total_alkalinity']));
  it('is led through one screen at a time', () => {
    expect(screensOf(stop)).toEqual(['sample', 'free_chlorine', 'total_chlorine', 'ph', 'total_alkalinity', 'around', 'look', 'answer']);
    expect(nextScreen(stop, 'sample')).toBe('free_chlorine');
    expect(nextScreen(stop, 'answer')).toBe('answer');
  });
  it('is too old for chlorine and pH after ten minutes, for alkalinity after an hour, and for nothing that was read or left out', () => {
    expect(tooOld(stop, at + 10 * minute)).toEqual([]);
    expect(tooOld(stop, at + 11 * minute)).toEqual(['free_chlorine', 'total_chlorine', 'ph']);
    expect(tooOld(stop, at + 61 * minute)).toEqual(['free_chlorine', 'total_chlorine', 'ph', 'total_alkalinity']);
    expect(tooOld({ ...typed(stop, 'free_chlorine', '1,2'), left: ['ph'] }, at + 11 * minute)).toEqual(['total_chlorine']);
    expect(tooOld({ ...stop, checkId: 'x' }, at + 61 * minute)).toEqual([]);
    expect(tooOld(newStop('main', ['ph']), at + 61 * minute)).toEqual([]);
  });
  it('taken again keeps what was read of the first as its own check, and tests free with total once more', () => {
    const { done, again } = sampledAgain(typed(stop, 'free_chlorine', '1,2'));
    expect(done!.what).toEqual(['free_chlorine']);
    expect(done!.draft.whenExact).toBe(at);
    expect(again.what).toEqual(['free_chlorine', 'total_chlorine', 'ph', 'total_alkalinity']);
    expect(again.draft.whenExact).toBeNull();
    expect(again.draft.rows).toEqual({});
    expect(sampledAgain(stop).done).toBeNull();
    const both = typed(typed(stop, 'free_chlorine', '1'), 'total_chlorine', '1,3');
    expect(sampledAgain(both).again.what).toEqual(['ph', 'total_alkalinity']);
  });
});

describe('a clock', () => {
  const begun = startTimer(newStop('main', ['total_chlorine', 'free_chlorine']), 'total_chlorine', at, 120);
  it('stands, then is to be read, then is late', () => {
    const timer = begun.timers[0]!;
    expect(phaseOf(timer, at - 900)).toEqual({ kind: 'standing', left: 120 });
    expect(phaseOf(timer, at + 119_500)).toEqual({ kind: 'standing', left: 1 });
    expect(phaseOf(timer, at + 120_000)).toEqual({ kind: 'reading', left: 60 });
    expect(phaseOf(timer, at + 195_000)).toEqual({ kind: 'late', left: 15 });
    expect(phaseOf({ ...timer, window: null }, at + 120_000)).toEqual({ kind: 'done', left: 0 });
  });
  it('of free chlorine opens its window at once: within a minute', () => {
    const timer = startTimer(newStop('main', ['free_chlorine']), 'free_chlorine', at, guideOf('free_chlorine', 'photometer').stand!).timers[0]!;
    expect(phaseOf(timer, at)).toEqual({ kind: 'reading', left: 60 });
  });
  it('goes on until its figure is typed, its test left out or its check saved', () => {
    const of = (stop: Stop) => running(newRound('R. Castellan', [stop], at)).length;
    expect(of(begun)).toBe(1);
    expect(of(typed(begun, 'total_chlorine', '1'))).toBe(0);
    expect(of({ ...begun, left: ['total_chlorine'] })).toBe(0);
    expect(of({ ...begun, checkId: 'x' })).toBe(0);
    expect(running(null)).toEqual([]);
  });
  it('tells by how much a reading came late, and nothing where nobody started it', () => {
    expect(lateBy(typed(begun, 'total_chlorine', '1', at + 180_000), 'total_chlorine')).toBeNull();
    expect(lateBy(typed(begun, 'total_chlorine', '1', at + 240_000), 'total_chlorine')).toBe(60_000);
    expect(lateBy(typed(begun, 'free_chlorine', '1', at + 240_000), 'free_chlorine')).toBeNull();
  });
});

describe('a pool that is left out', () => {
  const main = startTimer(newStop('main', ['total_chlorine']), 'total_chlorine', at, 120), saved = { ...newStop('teaching', ['ph']), checkId: 'x' }, spa = newStop('spa', ['ph']);
  it('takes its clocks with it and leads to the next that is open', () => {
    const next = poolLeft({ ...newRound('R. Castellan', [main, saved, spa], at), screen: 'look' })!;
    expect([next.stops[next.at]!.draft.poolId, next.screen, next.stops.length]).toEqual(['spa', 'sample', 2]);
    expect(running(next)).toEqual([]);
  });
  it('ends the round when it was the last', () => {
    expect(poolLeft({ ...newRound('R. Castellan', [saved, main], at), at: 1 })).toBeNull();
    expect(poolLeft(newRound('R. Castellan', [main, saved], at))).toBeNull();
  });
});

describe('beside the number', () => {
  const last = { value: 7.4, at: at - 3 * 3_600_000, suspect: false }, probe = { name: 'pH', value: 7.6, believed: 7.42, u: 0.04 };
  const says = (value: number | null, more: Parameters<typeof quietWords>[2]) => quietWords('ph', value, more, at).map(q => q.kind);
  it('nothing stands while nothing is typed: it would only be copied', () => {
    expect(says(null, { last, probe })).toEqual([]);
  });
  it('stands what was tested last and what the probe is believed to say, and whether it is far from either', () => {
    expect(says(7.44, { last, probe })).toEqual(['last', 'probe']);
    expect(says(8.1, { last, probe })).toEqual(['far', 'probe_far']);
    expect(says(8.1, { last: { ...last, suspect: true }, probe: null })).toEqual(['last']);
    expect(says(8.1, { last: { ...last, at: at - 49 * 3_600_000 }, probe: null })).toEqual(['last']);
    // A probe that is unsure by 0.3 is not contradicted by 0.4.
    expect(says(7.8, { last: null, probe: { ...probe, u: 0.3 } })).toEqual(['probe']);
  });
});
