import type { BoardReader, TileKind } from '../../contract.boards';
import type { boards as shape } from '../en/boards';

// Boards as files, and the display on the wall.
const kinds: Record<TileKind, string> = {
  pools: 'Bassins', readout: 'Valeurs', strip: 'Courbe', balance: 'Équilibre de l’eau', tests: 'Dernières analyses', alarms: 'Alarmes', due: 'À faire', pumps: 'Pompes', probes: 'Sondes', trust: 'À quoi se fier',
  jobs: 'Interventions', notes: 'Consigné', clock: 'Heure',
};
const readers: Record<BoardReader, string> = { engineer: 'l’ingénieur', operator: 'l’opérateur', maintenance: 'la maintenance', manager: 'le responsable de permanence' };

export const boards: typeof shape = {
  kinds, readers,
  title: 'Tableaux', choose: 'Lequel', none: 'Aucun tableau.', all: 'Tous les tableaux', pool: 'Bassin', toWall: 'Afficher au mur', for: (who: string) => `pour ${who}`, own: 'propre à l’installation',
  noSuch: 'Ce tableau n’existe pas.', problems: (n: number) => (n > 1 ? `${n} problèmes` : `${n} problème`),
  lastGood: 'Le fichier de ce tableau a des erreurs. Voici sa dernière version bonne.', neverGood: 'Le fichier de ce tableau a des erreurs, et il n’en existe pas encore de bonne version.',
  at: (file: string, line: number) => `${file}, ligne ${line}`, tileProblem: (what: string) => `Non affiché\u202f: ${what}`,
  ownTitle: 'Vos propres tableaux', ownHow: 'Un tableau est un fichier. En placer un dans le dossier «\u202fboards\u202f» à côté du fichier de l’installation\u202f; il apparaît ici en quelques secondes, avec ses erreurs éventuelles. Sous le même nom, il remplace un tableau fourni avec PlantWatch. Il peut être vérifié avant usage\u202f:',
  noPools: 'L’installation n’a pas ce bassin.', noProbes: 'L’installation n’a pas cette sonde.', noJobs: 'Aucune intervention ouverte.', noAlarm: 'Aucune alarme présente.', noAlarmFrom: (priority: string) => `Aucune alarme présente de priorité ${priority} ou plus.`,
  coming: 'Ensuite',
  deadSince: (at: string) => `depuis ${at}`, neverHeard: 'encore aucune nouvelle', heard: 'entendu', mayGoDark: 'Ce navigateur ne garde pas l’écran allumé.', pageOf: (n: number, of: number) => `Page ${n} sur ${of}`,
  moreTiles: (n: number) => (n > 1 ? `${n} parties de plus` : `${n} partie de plus`), hold: 'Garder cette page', heldUntil: (at: string) => `Gardée jusqu’à ${at}, reprendre`, gone: 'Le fichier de ce tableau a disparu\u202f; voici son dernier état.', triesAgain: 'Nouvel essai automatique.',
};
