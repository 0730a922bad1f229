import type { plantFile as shape } from '../en/plantFile';

// The plant file on a page: its forms, its text, what a change does.
export const plantFile: typeof shape = {
  title: 'Réglages',
  lead: 'Tout ce qui est ici tient dans un seul fichier, et y est réécrit avec ses commentaires. Rien ne change avant l’enregistrement.',
  asForm: 'Formulaire', asText: 'Texte', view: 'Affichage',
  none: 'Il n’y a pas encore de fichier de l’installation.', begin: 'Commencer par les premiers pas',
  notInForce: 'Le fichier tel qu’il est n’est pas en vigueur\u202f: la version d’avant l’est.', readOnly: 'Ce fichier ne peut pas être écrit d’ici\u202f: lui ou son dossier est en lecture seule. Changer ce qui est voulu, puis copier le texte et le placer vous-même.',
  copy: 'Copier le texte', copied: 'Copié', notCopied: 'Le navigateur ne laisse pas la page copier\u202f: sélectionner le texte et le copier.',
  meanwhile: 'Quelqu’un a enregistré une autre version depuis le début.', meanwhileMeans: 'Ci-dessous, ce qui distingue votre version de la sienne.',
  takeTheirs: 'Prendre la sienne', mineOver: 'Garder la mienne',
  unsaved: 'Pas encore enregistré', unsavedMeans: 'Les changements sont gardés sur cet appareil.', giveUp: 'Abandonner', sure: 'Abandonner vraiment', keep: 'Les garder',
  text: 'Texte du fichier de l’installation', problems: (n: number) => (n > 1 ? `${n} problèmes` : `${n} problème`), noProblems: 'Aucun problème', line: (n: number) => `Ligne ${n}`,
  save: 'Enregistrer', saving: 'Enregistrement', why: 'Motif', whyHint: 'Va au registre à côté de votre nom. Facultatif.', by: 'Changé par',
  changes: 'Ce qui change dans le fichier', noChange: 'Rien n’est changé.', effects: 'Ce que fait l’enregistrement', noEffect: 'Rien qui guide l’installation.', removed: 'part', added: 'vient',
  mustFix: 'Corriger les problèmes avant d’enregistrer.', saved: 'Enregistré et en vigueur.', savedNotTaken: 'Enregistré\u202f; en vigueur dans un instant.', unreachable: 'Le serveur est injoignable. La saisie reste sur cet appareil.',
  optional: 'facultatif', unsaid: 'non indiqué', yesNo: { true: 'oui', false: 'non' }, ends: ['de', 'à'], add: (what: string) => `Ajouter\u202f: ${what}`, addGroup: (what: string) => `En dire plus\u202f: ${what}`,
  remove: (what: string) => `Retirer ${what}`, removeSure: 'Retirer vraiment',
};
