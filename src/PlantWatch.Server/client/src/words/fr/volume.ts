import type { volume as shape } from '../en/volume';

// The volume of the plant file against what doses and retests tell of.
export const volume: typeof shape = {
  title: 'Ce que les doses disent du volume', more: 'Plus d’eau que dans le fichier de l’installation\u202f?', less: 'Moins d’eau que dans le fichier de l’installation\u202f?', rests: (n: number) => (n > 1 ? `Ses ${n} analyses de contrôle` : 'Sa seule analyse de contrôle'),
  when: 'Analyse', by: 'Grandeur et produit', tells: 'Indique', weight: 'Poids', apart: 'à l’écart des autres', none: 'rien n’a bougé comme prévu', toDoses: 'Voir les doses',
};
