import type first from './en/first';
import type rest from './en/rest';
import type { Language } from '../format/language';

/** What is said before any page is asked for. */
export type FirstWords = typeof first;

/** What the pages say that are loaded when they are wanted. */
export type OtherWords = typeof rest;

/** What is said on the pages, a folder a language, a file a subject. Another language is other objects of the same shapes. */
export type Words = FirstWords & OtherWords;

interface Folder { first: () => Promise<{ default: FirstWords }>; rest: () => Promise<{ default: OtherWords }> }

const folders: Record<Language, Folder> = {
  en: { first: () => import('./en/first'), rest: () => import('./en/rest') },
  de: { first: () => import('./de/first'), rest: () => import('./de/rest') },
  fr: { first: () => import('./fr/first'), rest: () => import('./fr/rest') },
  es: { first: () => import('./es/first'), rest: () => import('./es/rest') },
};

/**
 * The words of this page's language. The first are there before anything is drawn: main.tsx waits for them. The others are there before
 * any part that is loaded when it is wanted: lazyPart waits for them. What is drawn at once may use the first alone.
 */
export let words: Words;

let others: Promise<void> | null = null;
let spoken: Language;

export async function learn(language: Language): Promise<void> {
  spoken = language;
  // Until the others have come.
  words = { ...(await folders[language].first()).default } as Words;
}

/** Brings the other words; a failed attempt is made again by the next who asks. */
export function learnRest(): Promise<void> {
  others ??= folders[spoken].rest().then(m => { Object.assign(words, m.default); }, (e: unknown) => { others = null; throw e; });
  return others;
}
