import { en } from './en';

/** The words in use. Another language is another object of the same shape. */
export const words: typeof en = en;
