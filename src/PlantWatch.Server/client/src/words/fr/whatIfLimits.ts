import type { RunState } from '../../contract.whatIfLimits';
import type { whatIfLimits as shape } from '../en/whatIfLimits';
import { of } from './elision';

// What if the limits were others: the question, the run and the answer.

const alarms = (n: number) => (n > 1 ? `${n} alarmes` : `${n} alarme`);

export const whatIfLimits: typeof shape = {
  title: 'Simuler les limites',
  lead: 'L’historique est rejoué deux fois, une fois avec le fichier de l’installation tel quel, une fois avec les limites saisies. Rien n’en est changé, ni le registre, ni le fichier de l’installation, ni une alarme présente.',
  loading: 'Demande de ce qui est en vigueur.', nothing: 'Aucun bassin n’a de grandeur à limiter.', ask: 'La question', pool: 'Bassin', quantity: 'Grandeur', low: 'Minimum', high: 'Maximum', days: 'Jours en arrière',
  inForce: 'En vigueur', noLimit: 'aucune limite', own: 'propre à l’installation', row: (id: string) => `ligne ${id} du jeu`, stop: (low: string, high: string) => `L’arrêt toujours valable, ${low} à ${high}, n’est changé par aucune limite.`,
  byHand: 'Aucune sonde ne le surveille ici\u202f: seules les analyses manuelles y sont comparées.',
  from: (low: string) => `à partir de ${low}`, upTo: (high: string) => `jusqu’à ${high}`, between: (low: string, high: string) => `${low} à ${high}`,
  leaveEmpty: 'Vide\u202f: pas de limite propre de ce côté.', more: 'Hystérésis et temporisations', deadband: 'Hystérésis', onDelay: 'Durée dehors avant alarme', offDelay: 'Durée dedans avant disparition', usual: (v: string) => `Vide\u202f: ${v}`,
  looser: 'Moins strict que le jeu', looserMeans: 'Seulement si un ingénieur ou un administrateur en répond avec un motif. Personne ne desserre une limite de fermeture.', looserBy: 'Qui en répond', looserWhy: 'Motif', nobody: 'Personne dans le fichier de l’installation n’y est habilité.',
  source: 'Document et article', sourceHint: 'D’où vient la limite\u202f; figure dans la ligne du fichier de l’installation.',
  recordBegins: (at: string) => `Le registre commence ${at}.`, run: 'Rejouer', again: 'Autre question', notNumber: 'Un nombre, par exemple 7,4', needOne: 'Minimum, maximum ou les deux', needDays: (most: string) => `De 1 à ${most}\u00a0jours`,
  state: { waiting: 'Dans la file', running: 'En cours', done: 'Fait', cancelled: 'Annulé', failed: 'Échoué' } as Record<RunState, string>,
  ahead: (n: number) => (n > 1 ? `${n} autres passent avant.` : `${n} autre passe avant.`), cancel: 'Annuler', percent: (p: string) => `${p}\u00a0%`, gone: 'Ce calcul n’est plus connu\u202f: le serveur garde les huit derniers, jusqu’à son arrêt.',
  answer: 'La réponse',
  sentence: (days: string, lost: number, gained: number) => (lost === 0 && gained === 0 ? `Sur ${days}\u00a0jours\u202f: les mêmes alarmes.`
    : `Sur ${days}\u00a0jours\u202f: ${lost === 0 ? 'aucune alarme de moins' : `${alarms(lost)} de moins`}, ${gained === 0 ? 'aucune de plus' : `${gained} de plus`}`),
  critical: (n: number) => (n === 0 ? 'aucune de celles qui demandaient la fermeture n’est perdue' : n === 1 ? '1 qui demandait la fermeture est perdue' : `${n} qui demandaient la fermeture sont perdues`),
  load: (told: string, before: string, hours: string, hoursBefore: string) => (told === before && hours === hoursBefore ? 'Autant d’appels, et les alarmes restent aussi longtemps présentes.'
    : `Appels\u202f: ${told} au lieu de ${before}\u202f; alarmes présentes ${hours}\u00a0heures en tout au lieu de ${hoursBefore}.`),
  span: (from: string, to: string) => `${from} à ${to}`, asStands: 'Tel quel', changed: 'Changé', figure: 'Chiffre', alarms: 'Alarmes', stoodHours: 'Heures d’alarme, additionnées', calls: 'Appels', perHour: 'Appels par heure',
  byRule: 'Par règle', rule: 'Règle', lostShort: 'Perdues', gainedShort: 'Gagnées', lost: 'Perdues', gained: 'Gagnées', lostMeans: 'Présentes dans l’état actuel, et jamais avec le changement.', gainedMeans: 'Présentes seulement avec le changement.',
  none: 'Aucune.', firstOf: (n: number, all: number) => `Les ${n} premières sur ${all}.`, stood: (length: string) => `présente ${length}`, stands: 'encore présente à la fin', silent: 'n’a appelé personne', strip: 'Courbes autour', stripOf: (what: string) => `Courbes du bassin autour de\u202f: ${what}`,
  minutes: (m: string) => `${m}\u00a0min`, hours: (h: string) => `${h}\u00a0h`, priority: 'Priorité',
  lines: 'Lignes pour le fichier de l’installation', linesMeans: 'PlantWatch n’écrit jamais le fichier de l’installation. Pour mettre en vigueur, une personne habilitée copie la ligne sous les limites du bassin, à la place de celle de la même grandeur.', under: (pool: string) => `Sous limits ${of(pool)}`, copy: 'Copier', copied: 'Copié',
  sure: 'Avec quelle certitude', fidelity: (found: string, recorded: string, more: string) => `Sur ${recorded} alarmes du registre pour cette période, la relecture telle quelle en retrouve ${found}, plus ${more} autres.`, took: (readings: string, seconds: string) => `${readings} mesures en ${seconds}\u00a0s.`,
};
