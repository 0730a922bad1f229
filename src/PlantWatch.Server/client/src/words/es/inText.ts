/** A word that begins with a capital where it stands alone, as it is written in the middle of a line; pH and abbreviations stay as they are. */
export const inText = (word: string): string => (/^(p|\p{Lu}{2})/u.test(word) ? word : word.charAt(0).toLowerCase() + word.slice(1));
