const vowel = /^(?:[aeiouœâàéèêëîïôöûü]|hy)/i;

/** "de" before a name, shortened before a vowel; the h of a name is taken as one that is heard, but for hy (hypochlorite). */
export const of = (name: string): string => (vowel.test(name) ? `d’${name}` : `de ${name}`);
