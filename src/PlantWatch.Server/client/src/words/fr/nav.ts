import type { nav as shape } from '../en/nav';

/** Names of the pages in the navigation and of the groups they stand in. */
export const nav: typeof shape = {
  habits: {
    title: 'Sur cet appareil', language: 'Langue', asBrowser: (name: string) => `Comme le navigateur (${name})`, units: 'Unités', asSite: 'Comme l’installation', metric: 'Métriques', us: 'États-Unis', imperial: 'Impériales',
    hint: 'Les valeurs sont gardées en SI\u202f; gallons et livres ne figurent qu’à côté. À la saisie, virgule et point sont acceptés.',
  },
  more: 'Plus', moreTitle: 'Autres pages',
  groups: { water: 'Eau', alarms: 'Alarmes et limites', plant: 'Installation', record: 'Registre' },
  pages: {
    plantRound: 'Ronde technique', instruments: 'Instruments', round: 'Tournée', laboratory: 'Laboratoire', reagents: 'Réactifs', chemicals: 'Produits', limits: 'Limites', rules: 'Règles', exceptions: 'Dépassements', alarmHealth: 'Santé des alarmes', whatIfLimits: 'Simuler les limites', telling: 'Qui est prévenu', jobs: 'Interventions', handover: 'Relève', paper: 'Feuilles', boards: 'Tableaux',
    plantFile: 'Réglages de l’installation',
  },
};
