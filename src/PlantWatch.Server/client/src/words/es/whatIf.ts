import type { whatIf as shape } from '../en/whatIf';

// The page where a person tries changes of the water.

export const whatIf: typeof shape = {
  lead: 'Mover un dato y ver qué hace. No se anota ni se dosifica nada.',
  closed: 'Calculado sin contacto con el aire: en un vaso el CO\u2082 sale del agua, y el pH vuelve a subir en las horas siguientes. Una ayuda para pensar, no una dosis: analizar antes y después.',
  inputs: 'El agua', now: 'Ahora', then: 'Y si', change: 'Cambio', present: (v: string) => `ahora ${v}`, backTo: (v: string) => `volver a ${v}`, notTested: 'sin analizar',
  startedNow: 'Parte del agua tal como está.', startedAt: (clock: string) => `Parte del agua de las ${clock}.`, reset: 'Volver a ahora',
  notNumber: 'No es un número. Cifras con una coma o un punto.',
  doses: 'Echar', add: 'Añadir un producto', choose: 'Elegir\u2026', atHand: 'A mano', others: 'Del comercio, a su concentración habitual', remove: (name: string) => `Volver a quitar ${name}`, removeShort: 'Quitar',
  amount: (name: string) => `${name}, kilogramos`, volume: 'Agua que lo recibe', noProducts: 'El archivo de la instalación no lista productos.',
  volumeHint: (v: string) => `${v}: los vasos del circuito y el vaso de compensación, según el archivo de la instalación.`,
  care: 'Las cantidades son solo para pensar. No juntar nunca dos productos; qué puede echarse, dónde y con qué cuidado está en la', carePage: 'página de dosis',
  spent: 'Cuando el cloro añadido se haya consumido', slider: (name: string) => `${name}, deslizador`,
  results: 'Lo que hace', rows: {
    ph: 'pH', hypochlorousAcid: 'Ácido hipocloroso', hypochlorousShare: 'Parte del cloro libre', saturationIndex: 'Índice de saturación', freeChlorine: 'Cloro libre',
    totalAlkalinity: 'Alcalinidad total', calciumHardness: 'Dureza cálcica', dissolvedSolids: 'Sólidos disueltos', cyanurate: 'Ácido cianúrico',
  },
  short: { ph: 'pH', hypochlorousAcid: 'HOCl', hypochlorousShare: 'HOCl', saturationIndex: 'Índice' },
  claim: 'Índice según el modelo por especies: \u00b1 0,06 es lo más que puede afirmar, sin contar la incertidumbre de los propios análisis.',
  same: 'igual', unknown: '\u2013',
  stillShort: 'De la última agua posible.', stale: 'Valores de la última agua posible. Corregir el campo marcado.', unreachable: 'No se llega al servidor: los valores no se mueven. Se vuelve a intentar solo.',
  working: 'Calculando\u2026', spoken: (ph: string, hocl: string, index: string) => `pH ${ph}, ácido hipocloroso ${hocl}, índice de saturación ${index}`,
  curves: 'Curvas', against: 'Según', againstPh: 'pH', againstDose: (name: string) => `Dosis de ${name}`, kilograms: 'kg', of: (what: string, against: string) => `${what} según ${against}`,
  legend: (dose: boolean): string => (dose ? '\u25c6 y si \u00b7 sombreado: equilibrado, o los límites del vaso.' : '\u25c6 y si \u00b7 \u25cb ahora \u00b7 \u2504 el agua actual \u00b7 sombreado: equilibrado, o los límites de pH del vaso.'),
  table: 'Las curvas en cifras', noCurve: 'Se sabe demasiado poco de esta agua para trazar una curva.', runs: (what: string, a: string, b: string, from: string, to: string) => `${what} va de ${a} a ${b} entre ${from} y ${to}.`,
};
