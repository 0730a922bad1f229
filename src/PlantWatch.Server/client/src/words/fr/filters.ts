import type { filters as shape } from '../en/filters';
import { of } from './elision';

// Circulation and filters of a circuit, and the washing of them.
export const filters: typeof shape = {
  title: 'Circulation et filtres', flow: 'Circulation', low: (limit: string) => `bas sous ${limit}`, isLow: 'bas', noFlow: 'non mesurée',
  across: 'de perte de charge', clean: (text: string) => `propre ${text}`, rise: (now: string, due: string) => `hausse de ${now}, lavage à faire à ${due}`, noPressure: 'Pression non mesurée.', noClean: 'pression à l’état propre encore inconnue',
  washed: 'Lavé', by: (name: string) => `par ${name}`, never: 'Aucun lavage noté', every: (days: string) => `au plus tard tous les ${days}\u00a0jours`, due: 'lavage à faire',
  turnover: 'Recyclage', takes: (hours: string, mean: string) => `${hours} à ${mean}, moyenne de la dernière heure`, design: (hours: string, flow: string) => `prévu ${hours} à ${flow}`, short: 'insuffisant', noHour: 'pas encore d’heure entière relevée',
  rate: (speed: string) => `${speed} à travers les lits`,
  drained: (m3: string) => `${m3} vidangés`, water: 'Eau vidangée, m³', usual: (m3: string) => `Laissé vide, le volume habituel de ${m3} compte. C’est une dilution\u202f: de l’eau neuve prend la place.`, noUsual: 'Débit de lavage par ses minutes, rinçage compris. C’est une dilution\u202f: de l’eau neuve prend la place.',
  needWater: 'Donner l’eau en mètres cubes, ou laisser vide.',
  emptied: 'Vidé', neverEmptied: 'Aucun vidage noté', emptyDue: 'à vider', noteEmptied: 'Noter un vidage', emptyRise: (now: string, due: string) => `hausse de ${now}, à vider à ${due}`,
  emptyHint: 'Arrêter la pompe et fermer ses vannes avant d’ouvrir le couvercle, selon la notice\u202f; le dosage doit être arrêté auparavant.',
  emptyNoted: (name: string) => `Le vidage ${of(name)} est noté.`,
  begin: 'Commencer un lavage', note: 'Noter un lavage', done: 'Il est lavé', giveUp: 'Terminer sans lavage', cancel: 'Annuler',
  under: (name: string) => `En lavage par ${name}`, until: (time: string) => `se termine seul à ${time}\u202f; d’ici là, débit, pression et chambres de mesure n’appellent personne`,
  quietUntil: (time: string, quiet: string) => `se termine seul à ${time}\u202f; débit, pression et chambres de mesure n’appellent personne jusqu’à ${quiet}, ensuite l’heure de silence de ce filtre sur douze est épuisée`,
  noQuiet: (time: string) => `se termine seul à ${time}\u202f; les alarmes appellent quand même, car l’heure de silence de ce filtre sur douze est épuisée`,
  why: 'Pourquoi un autre', whyHint: 'Le dernier lavage de ce filtre est récent, et sa pression n’en demande pas.', needWhy: 'Dire pourquoi un autre.',
  hint: 'D’abord arrêter le dosage, tenir les baigneurs hors de l’eau, et suivre la notice et vos propres consignes. PlantWatch n’actionne aucune vanne\u202f: il ne sait que ce qu’on lui dit.',
  noted: (name: string) => `Le lavage ${of(name)} est noté. Sa pression à l’état propre est relevée dans la demi-heure qui suit.`,
  begun: (name: string) => `${name}\u202f: lavage commencé.`, ended: (name: string) => `${name}\u202f: lavage terminé.`,
};
