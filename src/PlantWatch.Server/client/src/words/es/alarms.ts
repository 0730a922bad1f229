import type { alarmList as listShape, alarmPage as pageShape, makeSafe as safeShape } from '../en/alarms';

/** Words of the record that the plant was made safe. */
export const makeSafe: typeof safeShape = {
  open: 'Anotar lo que se hizo', legend: 'Lo que se hizo', save: 'Anotar la puesta en seguridad', first: 'Se puede rearmar cuando conste que la instalación se puso en seguridad.',
  bathersOut: 'Los bañistas están fuera del agua', pumpsIsolated: 'Las dos bombas dosificadoras están aisladas', circulationHeld: 'La recirculación queda parada hasta que las tuberías sean seguras',
  roomLeft: 'Todos salieron de la sala y nadie volvió a entrar antes de saber que el aire estaba limpio', tankDealtWith: 'Alguien competente se ocupó de lo que hay en el depósito',
  ofTank: { legend: 'Lo que se hizo en este depósito', pumpsIsolated: 'La bomba de este depósito está aislada' },
  all: 'Solo se anota cuando las tres cosas están hechas.', done: (who: string) => `puesta en seguridad anotada por ${who}`,
};

/** Words of the alarm list: what asks for something, what is set aside and by whom. */
export const alarmList: typeof listShape = {
  asks: 'Piden algo', aside: 'Apartadas', nothingAsks: 'Nada pide nada ahora.',
  follow: (n: number) => (n === 1 ? 'y 1 que se deriva de ella' : `y ${n} que se derivan de ella`),
  latched: 'Enclavada: sigue hasta que se rearme', suppressedBy: (what: string) => `inhibida por diseño: ${what}`,
  outOfService: (who: string) => `fuera de servicio, por ${who}`, outUntil: (at: string) => `hasta ${at}`, oneShot: 'hasta que desaparezca una vez', again: (n: number) => (n === 1 ? 'avisada de nuevo una vez' : `avisada de nuevo ${n} veces`),
  several: 'Reconocer varias \u2026', severalTitle: 'Reconocer varias con un solo comentario', severalLead: 'Las que se veían al abrir esta lista. Lo crítico y lo plegado bajo otra alarma se reconoce por separado.',
  severalComment: 'Comentario para todas', needComment: 'Falta decir lo que vale para todas.', needOne: 'Falta elegir al menos una.', acknowledgeN: (n: number) => `Reconocer ${n}`,
  notTaken: (n: number) => (n === 1 ? '1 no se aceptó:' : `${n} no se aceptaron:`), silence: 'Silenciar esta', out: 'Devolver al servicio',
};

/** Words of the page of one alarm. */
export const alarmPage: typeof pageShape = {
  back: 'Todas las alarmas', gone: 'No existe esa alarma.', over: 'Esta alarma ha terminado. Aquí está lo que el registro sabe de ella.', newer: 'Vuelve a estar activa: ir a la más reciente',
  kept: 'No se llega al servidor. Aquí está lo último que se recibió.',
  rule: 'La regla que la origina', usual: 'Causa habitual', clears: 'Desaparece', allRules: 'Todas las reglas', course: 'Cómo evolucionó', raisedHere: 'activada',
  cause: 'Se deriva de', consequences: 'Lo que se deriva de ella', history: 'Lo que le pasó', noHistory: 'El registro aún no tiene nada de ella.',
  earlier: 'Antes, en los 30 días previos', noEarlier: 'No sonó en los 30 días previos.', onBehalf: 'por sí sola', since: 'desde', line: 'el límite que rebasó', none: 'nada de ella es una curva',
  legend: '\u25bc lo que le pasó a la alarma',
};
