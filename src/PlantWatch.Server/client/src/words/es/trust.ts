// Which to believe, the probe or the test.
import type { StoryPart, StoryWeight } from '../../contract.trust';
import type { trust as shape } from '../en/trust';

const isTest = (part: string) => part.startsWith('análisis');
const against = (part: string) => `contra ${isTest(part) ? 'el' : 'la'} ${part}`;
const inFavour = (part: string) => `a favor ${isTest(part) ? 'del' : 'de la'} ${part}`;

export const trust: typeof shape = {
  title: 'A qué dar crédito',
  byCheck: 'Según el análisis del', noCheck: 'Aún no hay análisis',
  weight: { none: '', leans: 'Se inclina hacia ahí', likely: 'Probable', strong: 'Casi seguro' } as Record<StoryWeight, string>,
  odds: (weight: string, odds: number) => `${weight}: unas ${odds >= 1000 ? 'mil' : odds >= 10 ? Math.round(odds) : decimal(odds)} veces más que la siguiente explicación`,
  next: 'Qué hacer a continuación', minutes: (n: number) => `unos ${n}\u00a0min`,
  advice: 'Consejos, primero el más útil. Paros y límites rigen mientras tanto.',
  whatSpeaks: 'Todos los indicios, y quién puede equivocarse', whoMayBeWrong: 'Quién puede equivocarse',
  part: {
    none: 'nadie', ph_test: 'análisis de pH', ph_probe: 'sonda de pH', chlorine_test: 'análisis de cloro', chlorine_probe: 'sonda de cloro', orp_probe: 'sonda redox',
  } as Record<StoryPart, string>,
  speaks: (part: string, ratio: number) => (ratio > 1.15 ? `${against(part)}, ${times(ratio)}` : ratio < 0.87 ? `${inFavour(part)}, ${times(1 / ratio)}` : ''),
  between: 'Hasta que se aclare, el agua puede estar en cualquier punto de',
  worse: 'Actuar según el peor extremo.',
  testBy: (clock: string) => `Análisis manual antes de las ${clock}`, testLate: (clock: string) => `Se esperaba un análisis manual antes de las ${clock}`,
  panel: 'Panel', received: 'Recibido', corrected: 'Corregido', test: 'Análisis', believed: 'Aceptado', expected: 'Esperado',
  panelDiffers: 'El panel y el valor recibido no coinciden', waiting: 'Se sopesan los indicios', sides: 'Lado a lado en la muestra',
};

function decimal(n: number): string {
  return n.toFixed(1).replace('.', ',');
}

function times(n: number): string {
  return n >= 100 ? '×\u2009100 y más' : `×\u2009${n >= 10 ? Math.round(n) : decimal(n)}`;
}
