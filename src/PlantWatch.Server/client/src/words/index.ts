import type english from './en';
import type { Language } from '../format/language';

/** What is said on the pages, a folder a language, a file a subject. Another language is another object of the same shape. */
export type Words = typeof english;

const folders: Record<Language, () => Promise<{ default: Words }>> = {
  en: () => import('./en'),
  de: () => import('./de'),
  fr: () => import('./fr'),
};

/** The words of this page's language. They are there before any page is: main.tsx waits for them. */
export let words: Words;

export async function learn(language: Language): Promise<void> {
  words = (await folders[language]()).default;
}
