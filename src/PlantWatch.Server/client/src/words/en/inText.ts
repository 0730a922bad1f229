/** A word that begins with a capital where it stands alone, as it is written in the middle of a line; pH stays as it is. */
export const inText = (word: string) => word.charAt(0).toLowerCase() + word.slice(1);
