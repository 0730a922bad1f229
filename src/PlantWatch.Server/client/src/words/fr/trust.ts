import type { StoryPart, StoryWeight } from '../../contract.trust';
import type { trust as shape } from '../en/trust';

// Which to believe, the probe or the test.

const withArticle = (part: string) => (/^[aeiou]/.test(part) ? `l’${part}` : `la ${part}`);

export const trust: typeof shape = {
  title: 'À quoi se fier',
  byCheck: 'D’après l’analyse du', noCheck: 'Aucune analyse',
  weight: { none: '', leans: 'Cela penche de ce côté', likely: 'Probable', strong: 'Quasi certain' } as Record<StoryWeight, string>,
  odds: (weight: string, odds: number) => `${weight}\u202f: environ ${odds >= 1000 ? 'mille' : odds >= 10 ? Math.round(odds) : decimal(odds)} contre 1 face à l’explication suivante`,
  next: 'Que faire ensuite', minutes: (n: number) => `environ ${n}\u00a0min`,
  advice: 'Conseils, du plus utile au moins utile. Arrêts et limites restent valables.',
  whatSpeaks: 'Tous les indices, et qui peut se tromper', whoMayBeWrong: 'Qui peut se tromper',
  part: {
    none: 'rien', ph_test: 'analyse du pH', ph_probe: 'sonde de pH', chlorine_test: 'analyse du chlore', chlorine_probe: 'sonde de chlore', orp_probe: 'sonde redox',
  } as Record<StoryPart, string>,
  speaks: (part: string, ratio: number) => (ratio > 1.15 ? `contre ${withArticle(part)}, ${times(ratio)}` : ratio < 0.87 ? `pour ${withArticle(part)}, ${times(1 / ratio)}` : ''),
  between: 'Tant que ce n’est pas tranché, l’eau peut être n’importe où dans',
  worse: 'Agir d’après la borne la plus défavorable.',
  testBy: (clock: string) => `Analyse manuelle avant ${clock}`, testLate: (clock: string) => `Une analyse manuelle était attendue avant ${clock}`,
  panel: 'Afficheur', received: 'Reçu', corrected: 'Corrigé', test: 'Analyse', believed: 'Retenu', expected: 'Attendu',
  panelDiffers: 'Afficheur et valeur reçue diffèrent', waiting: 'Pesée des indices', sides: 'Côte à côte au prélèvement',
};

function decimal(n: number): string {
  return n.toFixed(1).replace('.', ',');
}

function times(n: number): string {
  return n >= 100 ? '×\u2009100 et plus' : `×\u2009${n >= 10 ? Math.round(n) : decimal(n)}`;
}
