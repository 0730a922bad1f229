// What was written into the record, by whom and when.
import type { RecordGroup } from '../../contract.record';
import type { entries as shape } from '../en/record';

export const entries: typeof shape = {
  title: 'Lo que se anotó', about: 'Mostrar', span: 'Mirar atrás', days: (n: number) => (n === 1 ? '1 día' : `${n} días`), none: 'No se anotó nada en este tiempo.', more: 'En este tiempo hay más de lo que se muestra: mirar menos atrás, o mostrar una sola clase.',
  plant: 'por sí solo', later: (at: string) => `anotado ${at}`,
  groups: {
    all: 'Todo', exceptions: 'Incumplimientos', tests: 'Análisis', doses: 'Dosis', jobs: 'Trabajos', filters: 'Lavados de filtro', reagents: 'Reactivos e instrumentos', probes: 'Sondas', pools: 'Vasos e incidentes', limits: 'Límites y archivo', chemicals: 'Productos y bañistas', rounds: 'Rondas técnicas', handovers: 'Relevos', notes: 'Notas en las curvas',
  } as Record<RecordGroup, string>,
};
