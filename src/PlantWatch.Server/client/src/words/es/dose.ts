// Single doses.

import type { dose as shape } from '../en/dose';
import { withArticle } from './article';

export const dose: typeof shape = {
  lead: 'Calcula una dosis de un producto. Un consejo, nunca una orden: decide el personal de la instalación, y antes van la normativa local y la ficha de datos de seguridad del producto.',
  ask: 'Para qué', product: 'Producto', choose: 'Elegir\u2026', noProducts: 'El archivo de la instalación no lista productos.', noUse: 'PlantWatch no calcula dosis de este producto.',
  target: 'Qué mover', raise: (name: string) => `Subir ${withArticle(name)}`, lower: (name: string) => `Bajar ${withArticle(name)}`, value: 'Hasta', valueOf: (what: string) => `${what} hasta`, now: (v: string) => `Analizado: ${v}`, limits: (low: string, high: string) => `Límites de ${low} a ${high}`,
  notTested: 'Sin analizar', bathers: '¿Está el agua libre de bañistas?', clear: 'No hay nadie', notClear: 'Hay alguien', byPump: 'Este producto entra por su dosificador.',
  closed: 'El vaso está cerrado y sigue cerrado hasta la comprobación', notNumber: 'No es un número. Cifras con una coma o un punto.',
  waiting: 'Falta elegir un producto y un objetivo.', working: 'Calculando\u2026', unreachable: 'No se llega al servidor, y sin él no se calcula ninguna dosis. Se vuelve a intentar solo.',
  refusedTitle: 'Sin dosis', firstGo: 'Primer aporte', allAtOnce: 'Todo en un aporte', of: (v: string) => `de ${v} en total, con análisis de comprobación`, why: 'Por qué no todo', also: 'es decir', u: (v: string) => `Su efecto se conoce con unos \u00b1 ${v}\u00a0%`,
  cost: (v: string) => `Coste, unos ${v}`, strength: 'Concentración hoy', strengthOf: (v: string, chlorine: boolean) => `${v}\u00a0% en masa${chlorine ? ', como cloro disponible' : ''}`,
  age: (days: number) => (days === 0 ? 'conocida desde hoy' : days === 1 ? 'conocida desde hace 1 día' : `conocida desde hace ${days} días`), ageUnknown: 'antigüedad desconocida', water: 'Agua', firstWater: (v: string) => `llega primero a ${v}`,
  retest: 'Comprobación', retestAt: (hours: string, clock: string) => `tras ${hours}\u00a0h, no antes de las ${clock}`, after: 'Tras el primer aporte', nowColumn: 'Ahora', atOnce: 'Enseguida', spent: 'Ya consumido',
  rows: { ph: 'pH', saturation: 'Índice de saturación', freeChlorine: 'Cloro libre', hypochlorousAcid: 'Ácido hipocloroso', alkalinity: 'Alcalinidad total', calcium: 'Dureza cálcica', cyanurate: 'Ácido cianúrico', solids: 'Sólidos disueltos' },
  closedModel: 'Mezclado y sin contacto con el aire. Decide el análisis de comprobación.', side: 'Qué más hace', how: 'Dónde y en qué orden', equipment: 'Llevar puesto y tener a mano', precautions: 'Precauciones', says: 'A saber',
  given: 'Lo he añadido', givenLead: 'Anotar lo que se echó, también cuando no es lo que pone aquí.', amount: 'Cantidad', unitChoice: 'Unidad', when: 'Cuándo', note: 'Observación', by: 'Quién lo añadió', save: 'Al registro', needBy: '¿Quién lo añadió?',
  needAmount: '¿Cuánto fue? Un número mayor que 0.', needWhen: '¿Cuándo fue?', needProduct: 'Falta elegir antes el producto.', kept: 'En el registro. El análisis de comprobación se comparará con ello.', keptHere: 'Guardado en este dispositivo; sale en cuanto se llegue al servidor.',
  waitingHere: 'En este dispositivo, aún no en el registro', refusedHere: 'Rechazado', drop: 'Descartar', dropSure: '¿Descartar lo tecleado?',
  list: 'Dosis dadas', none: 'No se ha anotado ninguna dosis de este vaso.', noRetest: 'Aún sin comprobación', retestFrom: (clock: string) => `la comprobación vale desde las ${clock}`, corrected: 'Corregida por una anotación posterior', corrects: 'Corrige una anotación anterior',
  correct: 'Corregir', correcting: (what: string) => `Se corrige: ${what}`, reason: 'Por qué se corrige', needReason: '¿Por qué se corrige?', words: { unknown: '', as_predicted: 'según lo previsto', less: 'menos de lo previsto', more: 'más de lo previsto', other_way: 'al revés', not_comparable: 'no comparable' },
  hold: {
    open: 'Hay un incidente abierto en esta agua.', wants: (start: string, highest: string) => `Su plan pide ${start}\u00a0mg/L de cloro libre en todo el vaso antes de que empiece a contar; aquí se calcula una dosis de hasta ${highest}\u00a0mg/L.`,
    notClosed: (names: string) => `Sin cerrar: ${names}. Cerrar antes todos los vasos de esta agua.`, toIt: 'Al incidente',
  },
  unfit: 'no para este vaso', remarks: (n: number) => (n === 1 ? '1 observación' : `${n} observaciones`),
};
