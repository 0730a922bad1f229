import { afterEach, describe, expect, it, vi } from 'vitest';
import { languages, pick, type Language } from './language';

afterEach(() => { vi.unstubAllGlobals(); vi.resetModules(); });

const inLanguage = async (language: Language) => {
  vi.resetModules();
  vi.stubGlobal('navigator', { languages: [language] });
  return await import('./number');
};

describe('the language of a device', () => {
  it('is the one that was chosen', () => expect(pick('de', ['fr', 'en'])).toBe('de'));
  it('is else the first of the browser that the pages speak', () => expect(pick(null, ['xx', 'fr-CA', 'en-US'])).toBe('fr'));
  it('is English where they speak none of them', () => expect(pick('tlh', ['xx-XX', ''])).toBe('en'));
  it('is not fooled by the names that every object has', () => expect(pick('constructor', ['toString'])).toBe('en'));
});

describe.each(Object.keys(languages) as Language[])('figures in %s', language => {
  it('bear the decimal sign of the language and are read back as what they were', async () => {
    const { fixed, readTyped, signed } = await inLanguage(language);
    const comma = languages[language].decimal;
    expect(fixed(7.254, 2)).toBe(`7${comma}25`);
    expect(signed(-0.004, 2)).toBe(`0${comma}00`);
    expect(signed(0.5, 1)).toBe(`+0${comma}5`);
    for (const value of [0, 0.05, -1.25, 735]) expect(readTyped(fixed(value, 2))).toEqual({ kind: 'number', value });
  });
  it('are taken with a comma and with a point', async () => {
    const { readTyped } = await inLanguage(language);
    expect(readTyped('7,2')).toEqual(readTyped('7.2'));
    expect(readTyped('1.234,5')).toEqual({ kind: 'wrong' });
  });
});
