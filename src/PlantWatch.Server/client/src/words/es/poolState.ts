// How a pool is run, and what has to be so before it opens.
import type { GateWord, OperatingState } from '../../contract.poolState';
import type { poolState as shape } from '../en/poolState';

export const poolState: typeof shape = {
  title: 'Cómo funciona',
  states: { not_stated: 'Nadie lo ha dicho', open: 'Abierto', closed: 'Cerrado', covered: 'Cubierto', drained: 'Vaciado' } as Record<OperatingState, string>,
  forCause: 'por causa', since: 'desde', by: (name: string) => `según ${name}`,
  acts: { open: 'Abrir', closed: 'Cerrar', covered: 'Cubrir', drained: 'Vaciar' } as Record<Exclude<OperatingState, 'not_stated'>, string>,
  gate: 'Antes de abrir', gateHint: 'Lo que PlantWatch puede ver. Mirar el vaso, las profundidades y el material de rescate como pidan las normas propias; van antes que esta lista.',
  marks: { passed: 'cumplido', not_passed: 'no cumplido', not_known: 'no se sabe' } as Record<GateWord, string>,
  signers: (names: string) => `Se cerró por causa: se abre con la firma de ${names}, con un motivo.`, noSigners: 'Se cerró por causa, y el archivo de la instalación no nombra a nadie que pueda firmar su apertura: responsable de turno, ingeniería o administración.',
  history: 'Aperturas y cierres anteriores', historyTitle: 'Vasos abiertos y cerrados', noHistory: 'Nadie ha abierto ni cerrado aún ningún vaso.', change: (before: string, now: string) => `${before} \u2192 ${now}`, byIncident: 'por un incidente', newWater: 'agua nueva',
  test: 'Analizar', why: 'Motivo', cause: 'Algo iba mal', refilled: 'Tiene agua nueva',
  refilledHint: 'Entonces se aparta todo análisis hecho antes.', needWhy: 'Falta el motivo.', cancel: 'Dejarlo', unreachable: 'No se pudo obtener la lista.',
};
