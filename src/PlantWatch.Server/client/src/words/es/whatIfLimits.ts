// What if the limits were others: the question, the run and the answer.
import type { RunState } from '../../contract.whatIfLimits';
import type { whatIfLimits as shape } from '../en/whatIfLimits';

const alarms = (n: number) => (n === 1 ? '1 alarma' : `${n} alarmas`);

export const whatIfLimits: typeof shape = {
  title: 'Y si, límites',
  lead: 'La historia guardada se reproduce dos veces: una con el archivo de la instalación tal como está y otra con los límites que se tecleen. Nada cambia por ello: ni el registro, ni el archivo de la instalación, ni una alarma activa.',
  loading: 'Se pregunta qué está vigente.', nothing: 'Ningún vaso tiene una magnitud que se pueda limitar.', ask: 'La pregunta', pool: 'Vaso', quantity: 'Magnitud', low: 'Mínimo', high: 'Máximo', days: 'Días hacia atrás desde ahora',
  inForce: 'Vigente', noLimit: 'sin límite', own: 'propio de la instalación', row: (id: string) => `fila ${id} del juego`, stop: (low: string, high: string) => `El paro que siempre rige, de ${low} a ${high}, no lo cambia ningún límite.`,
  byHand: 'Ninguna sonda lo vigila aquí: solo se comparan los análisis manuales.',
  from: (low: string) => `desde ${low}`, upTo: (high: string) => `hasta ${high}`, between: (low: string, high: string) => `de ${low} a ${high}`,
  leaveEmpty: 'Si queda vacío: sin límite propio en ese extremo.', more: 'Banda muerta y retardos', deadband: 'Banda muerta', onDelay: 'Tiempo fuera hasta ser alarma', offDelay: 'Tiempo dentro hasta que desaparece', usual: (v: string) => `Si queda vacío: ${v}`,
  looser: 'Más ancho que el juego', looserMeans: 'Solo si alguien de ingeniería o administración responde de ello con un motivo. Un límite de cierre no lo ensancha nadie.', looserBy: 'Quién responde de ello', looserWhy: 'Motivo', nobody: 'Ninguna de las personas del archivo de la instalación puede.',
  source: 'Documento y apartado', sourceHint: 'De dónde se toma el límite; pasa a la línea del archivo de la instalación.',
  recordBegins: (at: string) => `El registro empieza ${at}.`, run: 'Reproducir', again: 'Preguntar otra cosa', notNumber: 'Un número, como 7,4', needOne: 'Mínimo, máximo o ambos', needDays: (most: string) => `De 1 a ${most} días`,
  state: { waiting: 'En espera', running: 'Reproduciendo', done: 'Terminado', cancelled: 'Cancelado', failed: 'Fallido' } as Record<RunState, string>,
  ahead: (n: number) => (n === 1 ? 'Hay otra antes.' : `Hay ${n} antes.`), cancel: 'Cancelar', percent: (p: string) => `${p}\u00a0%`, gone: 'Esta reproducción ya no se conoce: el servidor guarda las ocho últimas, hasta que se para.',
  answer: 'La respuesta',
  sentence: (days: string, lost: number, gained: number) => (lost === 0 && gained === 0 ? `En ${days} días: las mismas alarmas.`
    : `En ${days} días: ${lost === 0 ? 'ninguna alarma menos' : `${alarms(lost)} menos`}, ${gained === 0 ? 'ninguna más' : `${gained} más`}`),
  critical: (n: number) => (n === 0 ? 'no se perdió ninguna que pidiera cerrar' : n === 1 ? 'se perdió 1 que pedía cerrar' : `se perdieron ${n} que pedían cerrar`),
  load: (told: string, before: string, hours: string, hoursBefore: string) => (told === before && hours === hoursBefore ? 'Se llamaría a la gente con la misma frecuencia, y las alarmas durarían lo mismo.'
    : `Se llamaría a la gente ${told} veces en lugar de ${before}; las alarmas durarían ${hours} horas en total en lugar de ${hoursBefore}.`),
  span: (from: string, to: string) => `de ${from} a ${to}`, asStands: 'Tal como está', changed: 'Cambiado', figure: 'Cifra', alarms: 'Alarmas', stoodHours: 'Horas con alarma activa, sumadas', calls: 'Llamadas a personas', perHour: 'Llamadas por hora',
  byRule: 'Por regla', rule: 'Regla', lostShort: 'Perdidas', gainedShort: 'Ganadas', lost: 'Perdidas', gained: 'Ganadas', lostMeans: 'Saltan con la instalación tal como está, y en ningún momento con el cambio.', gainedMeans: 'Saltan solo con el cambio.',
  none: 'Ninguna.', firstOf: (n: number, all: number) => `Las primeras ${n} de ${all}.`, stood: (length: string) => `duró ${length}`, stands: 'sigue activa al final', silent: 'no llamó a nadie', strip: 'Evolución alrededor', stripOf: (what: string) => `Evolución del vaso alrededor de: ${what}`,
  minutes: (m: string) => `${m}\u00a0min`, hours: (h: string) => `${h}\u00a0h`, priority: 'Prioridad',
  lines: 'Líneas para el archivo de la instalación', linesMeans: 'PlantWatch nunca escribe el archivo de la instalación. Para ponerlo en vigor, una persona autorizada copia la línea bajo los límites del vaso, en lugar de la de la misma magnitud.', under: (pool: string) => `Bajo los límites de ${pool}`, copy: 'Copiar', copied: 'Copiado',
  sure: 'Hasta qué punto es seguro', fidelity: (found: string, recorded: string, more: string) => `De ${recorded} alarmas que el registro tiene de este tiempo, la reproducción sin cambios vuelve a hallar ${found}, y ${more} más.`, took: (readings: string, seconds: string) => `${readings} medidas en ${seconds}\u00a0s.`,
};
