import { describe, expect, it } from 'vitest';
import { summaryOf } from './summary';

describe('a strip in words', () => {
  it('has its last, least and most in the window alone', () =>
    expect(summaryOf([[0, 10, 20, 30], [null, null, null, null], [null, null, null, null], [1, 7, 5, 99], [null, null, null, null]], 5, 25)).toEqual({ last: { t: 20, v: 5 }, least: { t: 20, v: 5 }, most: { t: 10, v: 7 }, gaps: 0, longestGap: 0 }));
  it('takes the spread of a mean, and the corrected line where there is one', () => {
    expect(summaryOf([[0], [1], [9], [5], [null]], 0, 1)).toMatchObject({ least: { v: 1 }, most: { v: 9 }, last: { v: 5 } });
    expect(summaryOf([[0], [1], [9], [5], [6]], 0, 1)).toMatchObject({ least: { v: 6 }, most: { v: 6 }, last: { v: 6 } });
  });
  it('counts gaps and the longest of them, also one that goes on', () =>
    expect(summaryOf([[0, 10, 40, 50, 60], [], [], [1, null, 2, null, null], [null, null, null, null, null]] as never, 0, 100)).toMatchObject({ gaps: 2, longestGap: 50, last: { t: 40 } }));
  it('says nothing where nothing is', () => expect(summaryOf([[], [], [], [], []], 0, 1)).toEqual({ last: null, least: null, most: null, gaps: 0, longestGap: 0 }));
});
