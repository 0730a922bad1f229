// Was allein mit großem Anfang steht, wird in der Zeile klein; Hauptwörter bleiben groß.
const nouns = /^(Behälter|Elektrode|Elektrolyt|Hinweis|Membran)/;

export const inText = (word: string) => nouns.test(word) ? word : word.charAt(0).toLowerCase() + word.slice(1);
