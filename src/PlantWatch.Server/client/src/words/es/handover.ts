import type { handover as shape } from '../en/handover';

/** The page that one shift hands to the next. */
export const handover: typeof shape = {
  title: 'Relevo', lead: 'Lo que debe saber quien entra, tal como está ahora. Leerlo juntos, en la instalación.', last: (h: number) => `Las últimas ${h} horas`, span: 'Mirar atrás', hours: (h: number) => `${h} horas`,
  pools: 'Vasos', run: 'funcionamiento', alarms: 'Alarmas activas', noAlarms: 'Ninguna alarma activa.', aside: 'Apartadas: aplazadas, fuera de servicio, inhibidas', noAside: 'No hay nada apartado.', until: 'hasta',
  jobs: 'Trabajos sin terminar', noJobs: 'Ningún trabajo abierto.', due: 'Pendiente', noDue: 'Ningún análisis ni trabajo planificado pendiente en el próximo día.', check: 'Análisis', overdue: 'atrasado', dueAt: 'pendiente',
  happened: 'Lo que pasó', quiet: 'No se anotó nada en este tiempo.', print: 'Imprimir', incidents: 'Incidentes abiertos', kinds: { alarm: 'Alarma', check: 'Análisis', job: 'Trabajo', pool: 'Vaso' },
  tested: (by: string, what: string) => `${what}, por ${by}`,
  since: (from: string | null, to: string, at: string) => `Desde que ${from ? `${from} dio el relevo a ${to}` : `${to} tomó el relevo`}, ${at}`, neverSigned: 'Aún no se ha firmado ningún relevo',
  moves: { new: 'nuevo', changed: 'cambiado', gone: 'terminado', same: '', none: '' }, nothingMoved: 'Lo que había entonces sigue igual.', firstLead: 'Desde la primera firma, aquí se dice lo nuevo desde entonces.',
  waits: (from: string) => `${from} ha escrito un relevo que nadie ha firmado`, wrote: (at: string) => `Escrito ${at}`,
  leave: 'Quien sale escribe', leaveHint: 'Lo que ninguna pantalla sabe: lo que se intentó, a quién se llamó, qué vigilar.', note: 'Lo que debe saber quien entra', leaveName: 'Nombre de quien sale', saveNote: 'Escribir el relevo', another: 'Otro espera una firma. Queda en el registro sin firmar.', wroteIt: 'Escrito. Espera la firma de quien entra.',
  come: 'Quien entra firma', comeHint: 'Firmar dice que se ha leído lo que hay y se toma el relevo. No cambia nada de la instalación.', without: 'Nadie ha escrito un relevo; puede tomarse sin él, y el registro lo dice.', comeName: 'Nombre de quien entra', remark: 'Algo que añadir (puede quedar vacío)', signIt: 'Firmar', signedIt: 'Firmado.', readAgain: 'Leer otra vez',
  lines: (n: number) => (n === 1 ? 'La única línea que se firma' : `Las ${n} líneas que se firman`), noLines: 'No hay nada.', needNote: 'Falta lo que debe saber quien entra.',
  past: 'Relevos anteriores', noPast: 'Aún ninguno.', unsigned: 'nunca firmado', waiting: 'espera una firma', signedBy: (to: string, at: string) => `firmado por ${to}, ${at}`, noNote: 'tomado sin nota', altered: 'Las líneas guardadas no son las que se firmaron.',
  states: { incident: 'Incidente', due: 'pendiente', overdue: 'atrasado', did_not_help: 'No sirvió' } as Record<string, string>, parts: { unknown: '', pool: 'Vaso', alarm: 'Alarma', put_away: 'Apartada', job: 'Trabajo', task: 'Trabajo planificado', check: 'Análisis' },
  sign: 'Nombre de quien sale, nombre de quien entra, hora:',
};
