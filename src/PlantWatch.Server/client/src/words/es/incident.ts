// Contamination incidents.

import type { incident as shape } from '../en/incident';

export const incident: typeof shape = {
  lead: '¿Ha entrado algo en el agua? Primero, todos fuera. Después, declararlo aquí: el vaso cuenta como cerrado hasta que una persona cierre el incidente.',
  advice: 'Un plan para trabajar, no una orden. Antes van la normativa local y la autoridad sanitaria.',
  what: '¿Qué ha pasado?', kinds: {
    unknown: '', formed_stool: 'Heces sólidas', diarrhoeal_stool: 'Heces sueltas o diarreicas', vomit: 'Vómito', blood: 'Sangre', deck_spill: 'Fluido corporal en la playa del vaso',
  },
  authority: '¿Valores de quién?', authorityHint: 'Las autoridades difieren. Tomar la que nombra la normativa local; nunca se mezclan.',
  when: '¿Cuándo?', justNow: 'Ahora mismo', earlier: 'Antes', whenHint: 'Cuentan los análisis desde entonces.', note: 'Algo más', declare: 'Declarar y cerrar el vaso', declareDeck: 'Declarar',
  needKind: 'Falta qué ha pasado', needAuthority: 'Falta elegir los valores de quién', needWhen: 'Falta cuándo',
  closedTo: 'Cerrado a los bañistas', deckOpen: 'Mantener a la gente lejos del lugar', declaredBy: (who: string, at: string) => `declarado por ${who}, ${at}`, happened: (at: string) => `ocurrió ${at}`,
  word: {
    refused: 'Sin cuenta atrás', not_started: 'Sin empezar', running: 'Contando', paused: 'En pausa', test_missing: 'Detenida: falta análisis', reached: 'Espera cumplida',
  },
  left: 'Aún sin demostrar', leftAt: (residual: string) => `a ${residual}\u00a0mg/L`, done: 'Demostrado con análisis', of: (done: string, all: string) => `${done} de ${all}`,
  contact: 'mg\u00b7min/L', minutes: 'min', hours: 'h', nextTest: 'Próximo análisis antes de', inTime: (span: string) => `en ${span}`, late: (span: string) => `${span} de retraso`,
  earliest: 'Cumplida como pronto', earliestHint: 'si un análisis encuentra entonces que el residual sigue ahí. No es una promesa.', started: 'Empezó', reachedAt: 'Demostrada a las',
  enter: 'Anotar un análisis', onlyTests: 'Solo los análisis manuales mueven este reloj, nunca una sonda.',
  tests: 'Análisis desde que ocurrió', noTests: 'Aún no hay análisis.', table: { at: 'Muestra', place: 'Lugar', residual: 'Cl mg/L', ph: 'pH', celsius: '\u00b0C', gained: 'Suma' },
  lowest: 'Punto más bajo', counts: 'cuenta', places: { Pool: 'Vaso', Cell: 'Célula de medida', BalanceTank: 'Vaso de compensación', Unknown: 'Lugar sin indicar', Outlet: 'Punto más bajo' } as Record<string, string>,
  strip: 'Residual en el tiempo', stripSaid: (n: number, share: string) => `${n === 1 ? '1 análisis que cuenta' : `${n} análisis que cuentan`}; ${share} por ciento de la espera demostrado. La parte rellena es lo que cuenta.`,
  stripKey: '\u25c6 cuenta \u00b7 \u25c7 no cuenta \u00b7 relleno: contado \u00b7 \u2504 residual mínimo',
  steps: 'Qué hacer', byFigures: 'Se cuenta según', others: 'Lo que piden otras autoridades', allRows: 'Todas las filas de esta autoridad',
  row: {
    dilute: (c: string) => `Ácido cianúrico por encima de ${c}: primero diluir, sin cuenta atrás`, none: 'En el vaso no hay espera', hold: (level: string, time: string) => `${level}\u00a0mg/L durante ${time}`,
    contact: (ct: string) => `Producto de contacto ${ct}\u00a0mg\u00b7min/L`, water: (ph: string, celsius: string) => `pH ${ph}, ${celsius}\u00a0\u00b0C o más`, upTo: (v: string) => `hasta ${v}`,
    cyanurate: (range: string) => `ácido cianúrico ${range}\u00a0mg/L`, without: 'sin ácido cianúrico', start: (v: string) => `empieza a ${v}\u00a0mg/L en todo el vaso`, notCounted: 'solo se muestra, no se cuenta según ello',
  },
  notes: 'Notas', noNotes: 'Aún no hay notas.', addNote: 'Anotar', noteWhat: 'Lo que se hizo o se vio', needText: 'Falta decir lo que se hizo o se vio',
  close: 'Cerrar el incidente', closeLead: 'Cerrarlo permite abrir el vaso. PlantWatch no decide nada: decide quien firma. Mirar antes esto.', why: 'Por qué puede cerrarse', needWhy: 'Falta el motivo',
  closeNow: 'Cerrarlo', notReached: 'La espera no está demostrada con análisis. Cerrarlo ahora solo cabe si no hubo incidente, o si la autoridad lo dice.',
  past: 'Incidentes cerrados', noPast: 'Ninguno.', closedBy: (who: string, at: string) => `cerrado por ${who}, ${at}`, poolGone: 'su vaso salió del archivo de la instalación', share: (v: string) => `${v}\u00a0% de la espera demostrado`,
  more: 'Declarar otro', eachPool: 'Cada vaso de esta agua espera y se analiza por separado',
  inSharedWater: (name: string) => `Este vaso comparte el agua con ${name}, donde hay un incidente abierto: también está cerrado, y se analiza por separado.`, toIt: 'Al incidente',
};
