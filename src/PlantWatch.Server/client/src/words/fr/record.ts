import type { RecordGroup } from '../../contract.record';
import type { entries as shape, storage as storageShape } from '../en/record';

// What was written into the record, by whom and when.

export const entries: typeof shape = {
  title: 'Ce qui a été consigné', about: 'Afficher', span: 'Remonter', days: (n: number) => (n > 1 ? `${n}\u00a0jours` : `${n}\u00a0jour`), none: 'Rien n’a été consigné sur cette période.', more: 'Cette période contient plus que ce qui est affiché\u202f: remonter moins loin, ou n’afficher qu’un type.',
  plant: 'automatique', later: (at: string) => `écrit ${at}`,
  groups: {
    all: 'Tout', exceptions: 'Dépassements', tests: 'Analyses', doses: 'Doses', jobs: 'Interventions', filters: 'Lavages de filtre', reagents: 'Réactifs et instruments', probes: 'Sondes', pools: 'Bassins et incidents', limits: 'Limites et fichier d’installation', chemicals: 'Produits et baigneurs', rounds: 'Rondes techniques', handovers: 'Relèves', notes: 'Notes sur les courbes',
  } as Record<RecordGroup, string>,
};

export const storage: typeof storageShape = {
  title: 'Place sur le disque', waiting: 'Mesure en cours.', size: 'Taille du registre', aDay: 'Augmente par jour de', inAYear: 'Dans un an', free: 'Libre sur son disque', lasts: 'Le disque suffit pour', days: (n: string) => (n === '1' ? '1 jour' : `${n} jours`), long: 'plus de dix ans',
  kept: 'Mesures individuelles conservées', forEver: 'sans limite', gone: (circuit: string, day: string) => `${circuit}\u202f: les mesures individuelles avant le ${day} ont été supprimées\u202f; les minutes et les moyennes plus longues restent.`,
  little: 'À ce rythme, le disque sera plein dans moins de 90 jours\u202f: libérez de la place ou limitez la conservation des mesures individuelles (PlantWatch:Retention).',
  kb: (n: string) => `${n}\u00a0ko`, mb: (n: string) => `${n}\u00a0Mo`, gb: (n: string) => `${n}\u00a0Go`,
  backup: 'Dernière sauvegarde nocturne', noBackup: 'aucune', measured: (at: string) => `Mesuré ${at}, calculé sur les sept derniers jours.`,
};
