// The exceptions: from reading to action to retest to closed.
import type { BreachGrade, Closing, OwedAct, RetestWord, StepKind } from '../../contract.exceptions';
import type { exceptions as shape } from '../en/exceptions';

export const exceptions: typeof shape = {
  title: 'Incumplimientos',
  lead: 'Cada incumplimiento de un límite o un paro es una línea: qué se midió, qué se hizo, el análisis posterior y quién la cerró. Dosis, análisis, lavados y cierres de vasos entran solos.',
  open: 'Abiertos', closed: 'Cerrados', noneOpen: 'No hay nada abierto.', noneClosed: 'No se cerró nada en este tiempo.', counted: (n: number) => (n === 1 ? '1 cerrado' : `${n} cerrados`),
  pool: 'Vaso', all: 'Todos los vasos', month: 'Mes', anyMonth: 'Todos los meses', table: 'Como tabla (CSV)', older: 'Anteriores', newer: 'Siguientes', pageOf: (page: number, pages: number) => `Página ${page} de ${pages}`,
  grades: { operating: 'Límite de funcionamiento', closure: 'Límite de cierre', stop: 'Paro', laboratory: 'Límite de laboratorio' } as Record<BreachGrade, string>,
  marks: { reading: 'Medida', action: 'Acción', retest: 'Comprobación', closed: 'Cerrado' },
  notYet: 'aún no', nothing: 'ninguna', probe: 'sonda', minutes: (n: number) => (n < 90 ? `tras ${n}\u00a0min` : n < 2880 ? `tras ${Math.floor(n / 60)}\u00a0h ${String(n % 60).padStart(2, '0')}\u00a0min` : `tras ${Math.floor(n / 1440)}\u00a0d ${Math.floor((n % 1440) / 60)}\u00a0h`),
  onDuty: 'El operador de turno',
  owes: { act_and_retest: 'debe una acción y un análisis de comprobación', retest: 'debe un análisis de comprobación', settle: 'debe una respuesta: el análisis está dentro y su alarma sigue activa', resample: 'debe una nueva muestra', incident: 'sigue el plan del incidente: corre el reloj de este, y no el de esta línea' } as Record<OwedAct, string>,
  by: (at: string) => `antes de ${at}`, overdue: (span: string) => `atrasado ${span}`, left: (span: string) => `quedan ${span}`,
  test: 'Anotar el análisis', dose: 'Anotar una dosis', resample: 'Anotar el informe', say: 'Decir qué se hizo',
  sayLead: 'Solo lo que no puede contar ninguna dosis, lavado, cierre ni análisis: una bomba cebada, agua nueva aportada, una sonda limpiada.', text: 'Lo que se hizo', when: 'Cuándo', save: 'Guardar', need: 'Falta decir qué se hizo.', needTime: 'Falta cuándo.',
  closing: {
    none: '', by_retest: 'por un análisis de comprobación dentro', corrected: 'la medida se corrigió: no hubo incumplimiento', by_person: 'por una persona autorizada', limit_gone: 'aquello con que se comparó ya no está vigente', pool_gone: 'el vaso salió del archivo de la instalación',
    goes_on: 'sin terminar: lo que la cerró se corrigió, y continúa en una línea abierta después',
  } as Record<Closing, string>,
  withdrawn: 'retirado por una corrección', readingWithdrawn: 'La medida se retiró con una corrección, y su alarma sigue pidiendo un análisis.', course: (n: number) => `Todo el curso, ${n} ${n === 1 ? 'paso' : 'pasos'}`,
  steps: {
    seen: 'visto', words: 'dicho', dose: 'dosificado', pool_closed: 'vaso cerrado', new_water: 'llenado de nuevo', filter_washed: 'filtro lavado', retest: 'analizado', reading: 'medido de nuevo', back_inside: 'sonda de nuevo dentro', reading_corrected: 'medida corregida; decía:', reopened: 'abierto de nuevo: se retiró lo que lo cerró', incident: 'incidente', job: 'trabajo en ello', calibrated: 'calibrada', incident_over: 'ya no elevado a propósito',
  } as Record<StepKind, string>,
  retests: { none: '', inside: 'dentro', at_limit: 'en el límite', outside: 'fuera', not_proven: 'no demuestra nada' } as Record<RetestWord, string>,
  ofPool: 'Incumplimientos abiertos', toAll: 'Todos los de este vaso',
};
