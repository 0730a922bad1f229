import english from './en';

/** What is said on the pages, a folder a language, a file a subject. Another language is another object of the same shape. */
export type Words = typeof english;

export const words: Words = english;
