import { recall, remember } from '../api/kept';

/** The languages that the pages speak, by the code of BCP 47, each with its name in itself and the habits of its writing. */
export const languages = {
  en: { name: 'English', locale: 'en-GB', decimal: '.' },
  de: { name: 'Deutsch', locale: 'de-DE', decimal: ',' },
  fr: { name: 'Français', locale: 'fr-FR', decimal: ',' },
  es: { name: 'Español', locale: 'es-ES', decimal: ',' },
} as const satisfies Record<string, { name: string; locale: string; decimal: '.' | ',' }>;

export type Language = keyof typeof languages;

const known = (tag: string | null | undefined): Language | null => {
  const code = tag?.toLowerCase().split('-')[0] ?? '';
  return Object.hasOwn(languages, code) ? code as Language : null;
};

/** What this device chose; else the first of the browser's languages that the pages speak; else English. */
export function pick(chosen: string | null, browser: readonly string[]): Language {
  return known(chosen) ?? browser.map(known).find(l => l !== null) ?? 'en';
}

/** Null where the device follows its browser. */
export const chosen: Language | null = known(recall('language'));

/** The language of this page. It stays the same until the page is loaded anew. */
export const language: Language = pick(chosen, globalThis.navigator?.languages ?? []);

export const locale: string = languages[language].locale;

/** What stands between whole and tenths. */
export const decimal: string = languages[language].decimal;

/** Keeps the choice and begins the page anew in it; what was typed is kept as drafts are. */
export function speak(next: Language | null): void {
  remember('language', next);
  location.reload();
}
