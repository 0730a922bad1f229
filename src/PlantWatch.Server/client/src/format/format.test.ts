import { describe, expect, it } from 'vitest';
import { ageAt, span } from './age';
import { combined } from './chlorine';
import { apart, decimalsOfAcid, decimalsOfShare, fixed, grouped, readTyped, signed } from './number';
import { uuid7 } from './uuid7';
import { clock, fromField, toField } from './zone';

describe('numbers', () => {
  it('keep their decimals and never show a minus zero', () => {
    expect(fixed(7.4, 2)).toBe('7.40');
    expect(fixed(-0.001, 2)).toBe('0.00');
    expect(fixed(-0.31, 2)).toBe('\u22120.31');
    expect(fixed(null, 2)).toBe('\u2013');
    expect(fixed(NaN, 2)).toBe('\u2013');
  });
  it('show a sign when asked', () => {
    expect(signed(0.12, 2)).toBe('+0.12');
    expect(signed(-0.12, 2)).toBe('\u22120.12');
    expect(signed(0, 2)).toBe('0.00');
  });
  it('keep what little hypochlorous acid cyanurate leaves apart from none', () => {
    expect(fixed(0.0193, decimalsOfAcid(0.0193))).toBe('0.019');
    expect(fixed(0.68, decimalsOfAcid(0.68))).toBe('0.68');
    expect([decimalsOfShare(0.9), decimalsOfShare(45), decimalsOfShare(null)]).toEqual([1, 0, 0]);
  });
  it('tell a value and the limit it has passed with their own decimals, and with more only where the two would look equal', () => {
    expect(apart(7.71, 7.6, 2)).toEqual([2, 2]);
    expect(apart(7.604, 7.6, 2)).toEqual([3, 3]);
    expect(apart(7.6004, 7.6, 2)).toEqual([4, 4]);
    expect(apart(719.7, 720, 0)).toEqual([1, 1]);
    expect(apart(719.7, 720, 1, 0)).toEqual([1, 0]);
    expect(apart(719.97, 720, 1, 0)).toEqual([2, 2]);
    expect(apart(7.6, 7.6, 2)).toEqual([2, 2]);
  });
  it('group thousands', () => expect(grouped(1234567)).toBe('1\u202f234\u202f567'));
});

describe('what people type', () => {
  it('may have a comma or a point', () => {
    expect(readTyped('7,42')).toEqual({ kind: 'number', value: 7.42 });
    expect(readTyped(' 7.42 ')).toEqual({ kind: 'number', value: 7.42 });
    expect(readTyped(',5')).toEqual({ kind: 'number', value: 0.5 });
    expect(readTyped('7,')).toEqual({ kind: 'number', value: 7 });
  });
  it('is wrong rather than guessed at', () => {
    for (const text of ['1.234,5', '7..4', 'seven', '1e3', '--2', ',', '0x10', 'Infinity']) expect(readTyped(text)).toEqual({ kind: 'wrong' });
  });
  it('may be nothing', () => expect(readTyped('  ')).toEqual({ kind: 'empty' }));
  it('keeps a minus for the referee to refuse', () => expect(readTyped('-0,2')).toEqual({ kind: 'number', value: -0.2 }));
});

describe('ages', () => {
  it('use the fewest words', () => {
    expect(span(8_400)).toBe('8 s');
    expect(span(4 * 60_000)).toBe('4 min');
    expect(span(3 * 3_600_000 + 5 * 60_000)).toBe('3 h 05 min');
    expect(span(52 * 3_600_000)).toBe('2 d 4 h');
    expect(span(40 * 86_400_000)).toBe('40 d');
    expect(span(-5_000)).toBe('0 s');
  });
  it('are null for what never happened', () => {
    expect(ageAt(10_000, null)).toBeNull();
    expect(ageAt(10_000, 4_000)).toBe(6_000);
  });
});

describe('combined chlorine', () => {
  it('is total less free', () => expect(combined(1.1, 1.2)).toEqual({ kind: 'value', value: 0.1 }));
  it('is not invented from one test', () => expect(combined(1.1, null)).toEqual({ kind: 'missing' }));
  it('says when free stands above total', () => expect(combined(1.5, 1.2).kind).toBe('free_above_total'));
});

describe('uuid 7', () => {
  // RFC 9562, appendix A.6: 0x017F22E279B0 ms, rand_a 0xCC3, rand_b 0x18C4DC0C0C07398F.
  it('is the example of RFC 9562', () => {
    const random = [0, 0, 0, 0, 0, 0, 0x0c, 0xc3, 0x18, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f];
    expect(uuid7(0x017f22e279b0, b => b.set(random))).toBe('017f22e2-79b0-7cc3-98c4-dc0c0c07398f');
  });
  it('sorts by time', () => expect(uuid7(1_700_000_000_000) < uuid7(1_700_000_000_001)).toBe(true));
  it('is never the same twice', () => expect(new Set(Array.from({ length: 500 }, () => uuid7())).size).toBe(500));
});

describe('the clock of the site', () => {
  const zone = 'Europe/London';
  it('is not the clock of the browser', () => {
    expect(clock('2026-07-01T06:30:00Z', zone)).toBe('07:30');
    expect(clock('2026-01-01T07:30:00Z', zone)).toBe('07:30');
  });
  it('goes to a field and back in summer and winter', () => {
    for (const iso of ['2026-07-01T06:30:00Z', '2026-01-01T07:30:00Z', '2026-10-25T03:30:00Z']) {
      const t = Date.parse(iso);
      expect(fromField(toField(t, zone), zone)).toBe(t);
    }
  });
  it('takes the first of the two hours when clocks go back', () =>
    expect(fromField('2026-10-25T01:30', zone)).toBe(Date.parse('2026-10-25T00:30:00Z')));
  it('knows nonsense', () => expect(fromField('yesterday', zone)).toBeNull());
  it('waits for the year to be typed to its end', () => {
    for (const typed of ['0002-03-01T10:00', '0020-03-01T10:00', '0202-03-01T10:00', '1902-03-01T10:00']) expect(fromField(typed, zone)).toBeNull();
    expect(fromField('1970-03-01T10:00', 'UTC')).toBe(Date.UTC(1970, 2, 1, 10));
  });
});
