import { inText } from './inText';

/** A figure of the water with its article, in the middle of a line: el cloro libre, la alcalinidad total. */
export const withArticle = (name: string): string => `${/^(alcalinidad|conductividad|dureza|temperatura|turbidez)/i.test(name) ? 'la' : 'el'} ${inText(name)}`;
