import type { paper as shape } from '../en/paper';

/** Sheets for paper, and the view for an inspector. */
export const paper: typeof shape = {
  title: 'Feuilles', lead: 'Feuilles à imprimer, à classer ou à remettre. Chacune dit qui l’a imprimée, de quel registre, et montre les corrections comme telles.',
  kind: 'Feuille', kinds: { 'day-log': 'Feuille du jour', month: 'Registre du mois', calibration: 'Registre d’étalonnage des sondes', 'alarms-and-jobs': 'Alarmes et maintenance', inspection: 'Registre pour inspection' },
  says: {
    'day-log': 'Analyses dans l’ordre du temps avec les tournées manquées, sondes à côté, limites, doses, dépassements, alarmes, travaux, personnes, signatures.',
    month: 'Une ligne par jour avec minimum, moyenne et maximum, dépassements, laboratoire, et combien les sondes étaient là.',
    calibration: 'Ce qui a été fait sur chaque sonde, dans quelles solutions, ce qui a été corrigé dans son registre, et ce que vaut chaque jour.',
    'alarms-and-jobs': 'Alarmes par règle et une à une, dépassements, interventions et travaux planifiés.',
    inspection: 'D’abord ce qui a été analysé et lu, dépassements avec leur clôture, corrections, personnes\u202f; ce qui est calculé vient en dernier.',
  },
  pools: 'Bassins', day: 'Jour', to: 'Jusqu’au, inclus', month: 'Mois', name: 'Imprimé par', needName: 'Dire qui imprime', needPool: 'Choisir un bassin', needDay: 'Choisir un jour', needMonth: 'Donner le mois en année et numéro, comme 2026-03', order: 'Le dernier jour précède le premier',
  clock: (zone: string) => `Les jours sont ceux de ${zone}.`, open: 'Ouvrir pour lire ou imprimer', file: (ending: string) => ending.toUpperCase(),
  inspect: 'Pour une inspection', inspectLead: 'En deux étapes\u202f: quels bassins et quels jours, puis ce que dit le registre. Ce qui a été analysé et lu vient d’abord, ce qui est calculé en dernier.', toInspect: 'Pour une inspection, en deux étapes', stepOne: 'Quels bassins et quels jours', fromDay: 'Du', looks: 'Qui consulte', show: 'Montrer le registre', back: 'D’autres bassins ou jours',
};
