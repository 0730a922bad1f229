// The pages about a pool's water: what they share, and the balance.
import type { IndexKey } from '../../contract.balance';
import type { water as shape } from '../en/water';

const indices: Record<IndexKey, { name: string; what: string }> = {
  speciated: { name: 'Índice de saturación, por especies', what: 'Se calcula cada ion y cada par iónico, con la actividad según temperatura y sales. Es el que conviene seguir.' },
  handbook: { name: 'Índice de saturación, factores de manual', what: 'La tabla de factores de los manuales, para comparar con una hoja de control.' },
  closed_form: { name: 'Índice de saturación, fórmula cerrada', what: 'Una sola fórmula de temperatura, sólidos, calcio y alcalinidad.' },
  ionic_strength: { name: 'Índice de saturación, fuerza iónica', what: 'Constantes y un coeficiente de actividad, como en los métodos normalizados de laboratorio.' },
  precipitation: { name: 'Potencial de precipitación de carbonato cálcico', what: 'Por encima de 0: lo que aún puede precipitar de un litro. Por debajo de 0: lo que un litro aún puede disolver, por ejemplo de las juntas. Algunas normas lo imprimen con el signo contrario.' },
  saturation_ph: { name: 'pH de saturación', what: 'A este pH, el mismo calcio y la misma alcalinidad ni disolverían ni precipitarían.' },
  ryznar: { name: 'Índice de Ryznar', what: 'Pensado para agua de refrigeración; allí de 6 a 7 está cerca del equilibrio (de memoria).' },
  puckorius: { name: 'Índice de Puckorius', what: 'Pensado para torres de refrigeración, con un pH deducido de la alcalinidad en lugar del medido (de memoria).' },
  larson_skold: { name: 'Relación de Larson\u2013Skold', what: 'Pensada para acero al carbono: cloruro sobre bicarbonato, tomando como cloruro lo que completa los sólidos disueltos; por encima de 1,2 allí es corrosiva (de memoria). Los vasos con sal siempre la superan.' },
};

export const water: typeof shape = {
  nav: {
    label: 'Agua de este vaso',
    pages: { pool: 'Vaso', balance: 'Equilibrio', 'what-if': 'Y si', dose: 'Dosis', plan: 'Plan', incident: 'Incidente' },
  },
  titles: { pool: 'Vaso', balance: 'Equilibrio del agua', 'what-if': 'Y si', dose: 'Dosis', plan: 'Plan de dosificación', incident: 'Incidente' },
  notYet: 'Esta página aún está vacía.',
  indices,
  verdict: 'Índice de saturación', none: 'Sin índice',
  meaning: {
    corrosive: 'El agua disuelve carbonato cálcico: sufren juntas, revoco y hormigón.',
    balanced: 'El agua ni disuelve ni deposita lo bastante para importar.',
    scale_forming: 'El agua deposita carbonato cálcico: sufren filtros, calentador y transparencia.',
  } as Record<string, string>,
  scale: { dissolves: 'disuelve', deposits: 'deposita', label: (v: string, u: string) => `Índice ${v}, más o menos ${u}, en una escala de \u22121,5 a +1,5; equilibrado de \u22120,5 a +0,5` },
  plusMinus: (u: string) => `\u00b1\u00a0${u}`,
  noU: '\u00b1 desconocido', chlorineFrom: (origin: string) => `Cloro libre por ${origin}, `,
  both: (claim: string, u: string) => `\u00b1 ${claim} por el método, \u00b1 ${u} por los datos`, claimOnly: (claim: string) => `\u00b1 ${claim} por el método`, inputsOnly: (u: string) => `\u00b1 ${u} por los datos`,
  go: 'Índices', noIndices: 'Aún no se puede calcular ninguno: mirar lo que falta.', shown: 'Pensados para otras aguas: se muestran, no se actúa según ellos',
  inputs: 'Calculado a partir de', input: 'Dato', value: 'Valor', origin: 'Origen', age: 'Antigüedad', live: 'sonda', test: 'análisis', doubted: 'en duda', onDoubtedPh: 'se apoyan en un pH en duda', enter: 'Anotar un análisis', tryIt: 'Probar un cambio', more: 'Todos los índices y datos',
  chlorine: 'Cloro activo', share: 'del cloro libre', hocl: 'Ácido hipocloroso', withCyanurate: (v: string) => `Con ${v}\u00a0mg/L de ácido cianúrico`, without: 'Como sería sin ácido cianúrico', asItIs: 'Como está el agua',
  cadence: 'Se recalcula cada pocos segundos, según se mueven las sondas.',
};
