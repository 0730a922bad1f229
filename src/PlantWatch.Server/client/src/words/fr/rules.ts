import type { rulesPage as shape } from '../en/rules';

/** Words of the page of rules. */
export const rulesPage: typeof shape = {
  title: 'Règles', lead: 'Toutes les règles qui peuvent déclencher une alarme, dans les termes de la page de règles du projet. Un conseil n’est jamais un ordre\u202f; les règles locales et les professionnels habilités passent d’abord.',
  find: 'Chercher une règle', none: 'Aucune règle ne contient ces mots.', out: 'Hors service en ce moment', nothingOut: 'Rien n’est hors service.',
  cause: 'Cause habituelle', consequence: 'Si rien n’est fait', action: 'À faire', time: 'Délai pour réagir', onDelay: 'Doit durer', offDelay: 'Doit avoir cessé depuis', deadband: 'Hystérésis',
  suppressed: 'Inhibée', clears: 'Disparition', again: 'Rappel', againAfter: (hours: string) => `après ${hours}\u00a0h tant qu’elle est présente`, never: 'jamais', provenance: 'Connu par',
  rang: (n: number) => (n === 0 ? 'aucun déclenchement en 30\u00a0jours' : n === 1 ? '1 déclenchement en 30\u00a0jours' : `${n} déclenchements en 30\u00a0jours`), last: 'le dernier', standing: (n: number) => (n > 1 ? `${n} présentes` : `${n} présente`),
  safety: 'Elle touche à la sécurité des personnes\u202f: ni mise en attente, ni mise hors service.',
  eachItsOwn: 'Elle ne peut être mise hors service\u202f: chaque travail a sa propre alarme. Mettre celle-ci en attente, ou changer le plan.',
  take: 'Mettre hors service', taking: (rule: string) => `Mettre hors service\u202f: ${rule}`, what: 'Pour', choose: 'choisir…', why: 'Motif', until: 'Jusqu’au', untilHint: 'À l’heure du site. Elle revient alors seule en service.',
  caution: 'D’ici là, elle n’appelle personne. Veiller à ce que quelqu’un regarde à sa place.', needWhat: 'Choisir sur quoi elle porte.', needUntil: 'Dire jusqu’à quand.', past: 'Ce moment est déjà passé.', giveBack: 'Remettre en service', back: 'Remarque',
  outBy: (who: string) => `par ${who}`, outUntil: (at: string) => `jusqu’au ${at}`, open: 'jusqu’à ce qu’une personne la remette', nothingHere: 'Cette installation n’a rien qu’elle surveille.',
};
