import type { plantFile as shape } from '../en/plantFile';

// Die Anlagendatei auf einer Seite: ihre Formulare, ihr Text, was eine Änderung bewirkt.
export const plantFile: typeof shape = {
  title: 'Einstellungen der Anlage',
  lead: 'Alles hier steht in einer Datei und wird mit ihren Kommentaren dorthin zurückgeschrieben. Vor dem Speichern ändert sich nichts.',
  asForm: 'Als Formular', asText: 'Als Text', view: 'Wie sie gezeigt wird',
  none: 'Es gibt noch keine Anlagendatei.', begin: 'Mit den ersten Schritten beginnen',
  notInForce: 'Die Datei, wie sie daliegt, ist nicht in Kraft: es gilt die Fassung davor.', readOnly: 'Diese Datei lässt sich von hier nicht schreiben: sie oder ihr Ordner ist schreibgeschützt. Ändern, was zu ändern ist, dann den Text kopieren und selbst dort ablegen.',
  copy: 'Text kopieren', copied: 'Kopiert', notCopied: 'Der Browser lässt die Seite nicht kopieren: Text markieren und kopieren.',
  meanwhile: 'Inzwischen hat jemand eine andere Fassung gespeichert.', meanwhileMeans: 'Darunter steht, worin sich die eigene von jener unterscheidet.',
  takeTheirs: 'Eigene aufgeben, jene nehmen', mineOver: 'Mit der eigenen weitermachen, über jene',
  unsaved: 'Noch nicht gespeichert', unsavedMeans: 'Die Änderungen bleiben auf diesem Gerät.', giveUp: 'Änderungen aufgeben', sure: 'Wirklich aufgeben', keep: 'Behalten',
  text: 'Text der Anlagendatei', problems: (n: number) => n === 1 ? '1 Fehler' : `${n} Fehler`, noProblems: 'Keine Fehler', line: (n: number) => `Zeile ${n}`,
  save: 'Speichern', saving: 'Speichert', why: 'Warum', whyHint: 'Kommt neben dem Namen ins Betriebsbuch. Kann leer bleiben.', by: 'Wer ändert',
  changes: 'Was sich in der Datei ändert', noChange: 'Nichts ist geändert.', effects: 'Was beim Speichern geschieht', noEffect: 'Nichts, wonach die Anlage geht.', removed: 'geht', added: 'kommt',
  optional: 'kann leer bleiben', unsaid: 'nicht angegeben', yesNo: { true: 'ja', false: 'nein' }, ends: ['von', 'bis'], add: (what: string) => `Hinzufügen: ${what}`, addGroup: (what: string) => `Mehr angeben: ${what}`,
  remove: (what: string) => `${what} entfernen`, removeSure: 'Wirklich entfernen',
  mustFix: 'Vor dem Speichern die Fehler beheben.', saved: 'Gespeichert und in Kraft.', savedNotTaken: 'Gespeichert; es tritt gleich in Kraft.', unreachable: 'Der Server ist nicht erreichbar. Die Eingaben bleiben auf diesem Gerät.',
};
