import type { IndexKey } from '../../contract.balance';
import type { water as shape } from '../en/water';

// The pages about a pool's water: what they share, and the balance.

const indices: Record<IndexKey, { name: string; what: string }> = {
  speciated: { name: 'Indice de saturation, par espèces', what: 'Chaque ion et paire d’ions calculé, activité selon température et sel. Celui à suivre.' },
  handbook: { name: 'Indice de saturation, facteurs de manuel', what: 'La table de facteurs des manuels, pour comparer avec une feuille de relevés.' },
  closed_form: { name: 'Indice de saturation, formule unique', what: 'Une seule formule sur température, solides dissous, calcium et alcalinité.' },
  ionic_strength: { name: 'Indice de saturation, force ionique', what: 'Des constantes et un coefficient d’activité, comme dans les méthodes de laboratoire normalisées.' },
  precipitation: { name: 'Potentiel de précipitation du carbonate de calcium', what: 'Au-dessus de 0\u202f: ce qui peut encore précipiter d’un litre. Sous 0\u202f: ce qu’un litre peut encore dissoudre, par exemple des joints. Certaines règles l’impriment avec le signe contraire.' },
  saturation_ph: { name: 'pH de saturation', what: 'À ce pH, le même calcium et la même alcalinité ne dissoudraient ni ne déposeraient rien.' },
  ryznar: { name: 'Indice de Ryznar', what: 'Fait pour l’eau de refroidissement\u202f; environ 6 à 7 y est proche de l’équilibre (de mémoire).' },
  puckorius: { name: 'Indice de Puckorius', what: 'Fait pour les tours de refroidissement, avec un pH tiré de l’alcalinité au lieu du pH mesuré (de mémoire).' },
  larson_skold: { name: 'Rapport de Larson–Skold', what: 'Fait pour l’acier doux\u202f: chlorure sur bicarbonate, le chlorure étant ce qui complète les solides dissous\u202f; au-dessus de 1,2 l’eau y est corrosive (de mémoire). Les bassins salés le dépassent toujours.' },
};

export const water: typeof shape = {
  nav: {
    label: 'Eau de ce bassin',
    pages: { pool: 'Bassin', balance: 'Équilibre', 'what-if': 'Simulation', dose: 'Dose', plan: 'Plan', incident: 'Incident' },
  },
  titles: { pool: 'Bassin', balance: 'Équilibre de l’eau', 'what-if': 'Simulation', dose: 'Dose', plan: 'Plan de dosage', incident: 'Incident' },
  notYet: 'Cette page est encore vide.',
  indices,
  verdict: 'Indice de saturation', none: 'Pas d’indice',
  meaning: {
    corrosive: 'L’eau dissout le carbonate de calcium\u202f: joints, enduit et béton souffrent.',
    balanced: 'L’eau ne dissout ni ne dépose de façon notable.',
    scale_forming: 'L’eau dépose du carbonate de calcium\u202f: filtres, réchauffeur et limpidité souffrent.',
  } as Record<string, string>,
  scale: { dissolves: 'dissout', deposits: 'dépose', label: (v: string, u: string) => `Indice ${v}, à ${u} près, sur une échelle de −1,5 à +1,5\u202f; équilibre de −0,5 à +0,5` },
  plusMinus: (u: string) => `±\u00a0${u}`,
  noU: '± inconnu', chlorineFrom: (origin: string) => `Chlore libre par ${origin}, `,
  both: (claim: string, u: string) => `± ${claim} par la méthode, ± ${u} par les données`, claimOnly: (claim: string) => `± ${claim} par la méthode`, inputsOnly: (u: string) => `± ${u} par les données`,
  go: 'Indices', noIndices: 'Aucun n’est encore possible\u202f: voir ce qui manque.', shown: 'Faits pour d’autres eaux\u202f: montrés, sans effet',
  inputs: 'Calculé à partir de', input: 'Donnée', value: 'Valeur', origin: 'Par', age: 'Âge', live: 'sonde', test: 'analyse', doubted: 'douteux', onDoubtedPh: 'reposent sur un pH douteux', enter: 'Saisir une analyse', tryIt: 'Essayer un changement', more: 'Tous les indices et données',
  chlorine: 'Chlore actif', share: 'du chlore libre', hocl: 'Acide hypochloreux', withCyanurate: (v: string) => `Avec ${v}\u00a0mg/L d’acide cyanurique`, without: 'Comme ce serait sans acide cyanurique', asItIs: 'L’eau telle qu’elle est',
  cadence: 'Recalculé au fil des sondes, toutes les quelques secondes.',
};
