import type { plan as shape } from '../en/plan';

// The dosing plan.

export const plan: typeof shape = {
  lead: 'De los últimos análisis al interior de cada banda, en pasos seguros y con poco coste. Un consejo, nunca una orden: decide el personal de la instalación, y antes van la normativa local y las fichas de datos de seguridad de los productos.',
  bathers: '¿Está el agua libre de bañistas?', clear: 'No hay nadie', notClear: 'Hay alguien', wish: 'Además de la seguridad', fewer: 'Pocos aportes', cheapest: 'Menor coste de productos',
  working: 'Calculando\u2026', unreachable: 'No se llega al servidor, y sin él no se calcula ningún plan. Se vuelve a intentar solo.', wrong: 'El servidor no acepta estos valores:',
  bands: 'El agua frente a sus bandas', figure: 'Magnitud', now: 'Ahora', band: 'Banda', then: 'Tras el plan', practice: 'práctica habitual', from: (source: string) => `según ${source}`,
  standing: { unknown: '', not_tested: 'sin analizar', inside: 'dentro', within_uncertainty: 'dentro de la incertidumbre del análisis: repetir antes', below: 'por debajo', above: 'por encima' },
  figures: { ph: 'pH', total_alkalinity: 'Alcalinidad total', calcium_hardness: 'Dureza cálcica', free_chlorine: 'Cloro libre', cyanuric_acid: 'Ácido cianúrico', dissolved_solids: 'Sólidos disueltos', saturation_index: 'Índice de saturación' },
  atLeast: (v: string) => `al menos ${v}`, atMost: (v: string) => `como máximo ${v}`, between: (a: string, b: string) => `de ${a} a ${b}`, plusMinus: (v: string) => `\u00b1 ${v}`,
  steps: 'Pasos', tickHint: 'Las marcas quedan solo en esta página. Lo que se echó pasa al registro en la', dosePage: 'página de dosis', done: (what: string) => `Hecho: ${what}`,
  part: (k: number, n: number) => (n > 1 ? `aporte ${k} de ${n}` : ''), strength: (v: string, age: string) => `${v}\u00a0% en masa, ${age}`, ageDays: (d: number) => (d === 0 ? 'conocida desde hoy' : `conocida desde hace ${d}\u00a0d`), ageUnknown: 'antigüedad desconocida',
  aerate: 'Dejar salir el dióxido de carbono', letChlorineFall: 'Dejar bajar el cloro libre', dilute: 'Primero agua nueva', dilution: (percent: string, drain: string, overflow: string) => `Renovar el ${percent}\u00a0% del agua: vaciar ${drain} y rellenar, o aportar ${overflow} mientras rebosa.`,
  wait: (h: string) => `Después ${h}\u00a0h de recirculación, y analizar`, waitTest: 'Guiarse por el análisis', predicted: 'Previsto', care: 'Qué llevar puesto y cómo manejarlo', volume: (v: string) => `Agua del circuito: ${v}`,
  cost: (v: string) => `Los productos cuestan unos ${v} en la moneda de la instalación`, mass: (v: string) => `${v} de productos en total; coste sin calcular, por falta de precios`, says: 'A saber', refused: 'Antes de que haya plan', leftOut: 'Sin incluir', always: 'Siempre',
  fill: 'El agua de aporte', fillLead: 'Solo hace falta donde los productos no bastan.', askFill: 'Planificar con esta agua', notNumber: 'No es un número. Cifras con una coma o un punto.',
};
