import type { RecordGroup } from '../../contract.record';
import type { entries as shape } from '../en/record';

// What was written into the record, by whom and when.

export const entries: typeof shape = {
  title: 'Ce qui a été consigné', about: 'Afficher', span: 'Remonter', days: (n: number) => (n > 1 ? `${n}\u00a0jours` : `${n}\u00a0jour`), none: 'Rien n’a été consigné sur cette période.', more: 'Cette période contient plus que ce qui est affiché\u202f: remonter moins loin, ou n’afficher qu’un type.',
  plant: 'automatique', later: (at: string) => `écrit ${at}`,
  groups: {
    all: 'Tout', exceptions: 'Dépassements', tests: 'Analyses', doses: 'Doses', jobs: 'Interventions', filters: 'Lavages de filtre', reagents: 'Réactifs et instruments', probes: 'Sondes', pools: 'Bassins et incidents', limits: 'Limites et fichier d’installation', chemicals: 'Produits et baigneurs', rounds: 'Rondes techniques', handovers: 'Relèves', notes: 'Notes sur les courbes',
  } as Record<RecordGroup, string>,
};
