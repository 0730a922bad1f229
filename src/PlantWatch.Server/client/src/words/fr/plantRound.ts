import type { RoundWord } from '../../contract.plantRound';
import type { plantRound as shape } from '../en/plantRound';

// The round through the plant room.

export const plantRound: typeof shape = {
  title: 'Ronde technique', lead: 'Une fois par jour dans le local technique. Ce qui reste vide est laissé de côté.', none: 'Aucun circuit connu.', circuit: 'Local technique',
  words: { due: 'à faire aujourd’hui', walked: 'faite aujourd’hui', overdue: 'en retard' } satisfies Record<RoundWord, string>,
  dueAt: (clock: string) => `avant ${clock}`, wasDue: (clock: string) => `était à faire avant ${clock}`, walkedBy: (who: string, clock: string) => `faite par ${who}, ${clock}`, never: 'personne ne l’a encore faite',
  last: (v: string, age: string) => `dernier ${v}, il y a ${age}`, inOrder: 'en ordre', notInOrder: 'pas en ordre', notLooked: 'pas regardé', remark: 'Ce qui ne va pas', limits: (l: string) => `en ordre\u202f: ${l}`, notToday: 'pas pour cette ronde',
  who: 'Fait par', note: 'Autres observations', save: 'Enregistrer', saved: 'Ronde technique enregistrée', waiting: 'Gardée sur cet appareil\u202f: elle part seule dès que le serveur est joignable.', refused: 'Le serveur a refusé cette ronde', dropSure: 'Jeter cette ronde pour de bon\u202f?', again: 'En faire une autre',
  allWell: 'Tout ce qui a été relevé est en ordre.', needSomething: 'Relever au moins une chose, ou écrire ce qui a été vu.', number: 'Pas un nombre. Des chiffres avec une virgule ou un point.', storageFull: 'Cet appareil ne peut pas la garder, et le serveur est injoignable. Ne pas fermer cette page.',
  impossible: (low: string, high: string, unit: string) => `Un appareil indique de ${low} à ${high}\u00a0${unit}\u202f: relire.`, meterFar: (more: string, holds: string) => `${more}\u00a0m\u00b3 de plus qu’avant, pour des bassins de ${holds}\u00a0m\u00b3\u202f: relire`,
  draft: 'La saisie reste sur cet appareil.', wash: 'Noter un lavage de filtre', jobs: 'Écrire une intervention', deliveries: 'Livraisons, remplissages, baigneurs', meterBack: 'moins qu’avant\u202f: relire', asHeard: 'aux dernières nouvelles de cet appareil',
};
