// What was written into the record, by whom and when.
import type { RecordGroup } from '../../contract.record';
import type { entries as shape, storage as storageShape } from '../en/record';

export const entries: typeof shape = {
  title: 'Lo que se anotó', about: 'Mostrar', span: 'Mirar atrás', days: (n: number) => (n === 1 ? '1 día' : `${n} días`), none: 'No se anotó nada en este tiempo.', more: 'En este tiempo hay más de lo que se muestra: mirar menos atrás, o mostrar una sola clase.',
  plant: 'por sí solo', later: (at: string) => `anotado ${at}`,
  groups: {
    all: 'Todo', exceptions: 'Incumplimientos', tests: 'Análisis', doses: 'Dosis', jobs: 'Trabajos', filters: 'Lavados de filtro', reagents: 'Reactivos e instrumentos', probes: 'Sondas', pools: 'Vasos e incidentes', limits: 'Límites y archivo', chemicals: 'Productos y bañistas', rounds: 'Rondas técnicas', handovers: 'Relevos', notes: 'Notas en las curvas',
  } as Record<RecordGroup, string>,
};

export const storage: typeof storageShape = {
  title: 'Espacio en el disco', waiting: 'Se está midiendo.', size: 'Tamaño del registro', aDay: 'Crece al día', inAYear: 'Dentro de un año', free: 'Libre en su disco', lasts: 'El disco alcanza para', days: (n: string) => (n === '1' ? '1 día' : `${n} días`), long: 'más de diez años',
  kept: 'Lecturas individuales conservadas', forEver: 'siempre', gone: (circuit: string, day: string) => `${circuit}: las lecturas individuales anteriores al ${day} se eliminaron; quedan los minutos y las medias más largas.`,
  little: 'A este ritmo el disco estará lleno en menos de 90 días: libere espacio o limite la conservación de las lecturas individuales (PlantWatch:Retention).',
  kb: (n: string) => `${n}\u00a0kB`, mb: (n: string) => `${n}\u00a0MB`, gb: (n: string) => `${n}\u00a0GB`,
  backup: 'Última copia de seguridad nocturna', noBackup: 'ninguna', measured: (at: string) => `Medido ${at}, calculado con los últimos siete días.`,
};
