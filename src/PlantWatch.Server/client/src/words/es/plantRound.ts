// The round through the plant room.
import type { RoundWord } from '../../contract.plantRound';
import type { plantRound as shape } from '../en/plantRound';

export const plantRound: typeof shape = {
  title: 'Ronda técnica', lead: 'Una vez al día por la sala técnica. Lo que queda vacío se omite.', none: 'Aún no se conoce ningún circuito.', circuit: 'Sala técnica',
  words: { due: 'pendiente hoy', walked: 'hecha hoy', overdue: 'atrasada' } satisfies Record<RoundWord, string>,
  dueAt: (clock: string) => `antes de las ${clock}`, wasDue: (clock: string) => `tocaba antes de las ${clock}`, walkedBy: (who: string, clock: string) => `hecha por ${who}, ${clock}`, never: 'nadie la ha hecho aún',
  last: (v: string, age: string) => `última ${v}, hace ${age}`, inOrder: 'en orden', notInOrder: 'no en orden', notLooked: 'sin mirar', remark: 'Qué está mal', limits: (l: string) => `en orden: ${l}`, notToday: 'no toca en esta ronda',
  who: 'Quién la hizo', note: 'Qué más se vio', save: 'Guardar la ronda', saved: 'Ronda técnica guardada', waiting: 'Guardada en este dispositivo: sale sola en cuanto se llegue al servidor.', refused: 'El servidor rechazó esta ronda', dropSure: '¿Descartar esta ronda para siempre?', again: 'Hacer otra',
  allWell: 'Todo lo leído está en orden.', needSomething: 'Falta leer al menos una cosa, o escribir lo que se vio.', number: 'No es un número. Cifras con una coma o un punto.', storageFull: 'Este dispositivo no puede guardarla, y no se llega al servidor. No cerrar esta página.',
  impossible: (low: string, high: string, unit: string) => `Un aparato marca de ${low} a ${high}\u00a0${unit}: leer otra vez.`, meterFar: (more: string, holds: string) => `${more}\u00a0m\u00b3 más que antes, en vasos de ${holds}\u00a0m\u00b3: leer otra vez`,
  draft: 'Lo tecleado se guarda en este dispositivo.', wash: 'Anotar un lavado', jobs: 'Anotar un trabajo', deliveries: 'Entregas, rellenos, bañistas', meterBack: 'menos que antes: leer otra vez', asHeard: 'según lo último que recibió este dispositivo',
};
