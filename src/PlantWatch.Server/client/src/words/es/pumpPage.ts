import type { pumpPage as shape } from '../en/pumpPage';

// A dosing pump by what the water does.
export const pumpPage: typeof shape = {
  verdict: 'Según lo que hace el agua', notJudged: 'El agua no juzga esta bomba:', seeFile: 'Caudales, emboladas y concentraciones están en el archivo de la instalación.',
  waiting: 'Aún no se sabe nada de su agua.',
  learning: (days: string, wanted: string) => `Se aprende lo que este vaso suele pedir: ${days} de ${wanted} días. Hasta entonces solo se dice lo que muestran las muestras sueltas.`,
  well: 'Hace lo que dicen sus emboladas, hasta donde el agua lo muestra.', suspicion: (percent: string) => `El problema más probable lo es al ${percent}.`, hardly: 'menos del 1\u00a0%',
  since: 'parece que desde', missing: (litres: string) => `faltan ${litres} hasta ahora`, unasked: (litres: string) => `${litres} entraron sin pedirse hasta ahora`, certain: (percent: string) => `certeza ${percent}`,
  moved: (expected: string, observed: string) => `el pH debía moverse ${expected} y se movió ${observed}`, toAlarm: 'A su alarma', action: 'Qué hacer',
  amounts: 'Cantidades', today: 'impulsado hoy', limit: (litres: string) => `verosímil en un día ${litres}`, over: (span: string) => `impulsado en ${span}`, fell: (span: string) => `bajada del depósito en ${span}`, unknown: 'no se sabe',
  beside: 'Lo impulsado es lo que deberían dar sus emboladas o su tiempo de marcha; lo que bajó el depósito es lo que salió de él. Si llegó, lo dice el agua.',
  jobs: 'Trabajos', newJob: 'Anotar un trabajo', course: 'Evolución', spans: { 24: '24 horas', 72: '3 días', 168: '7 días' } as Record<number, string>, range: 'Tiempo mostrado',
  driven: 'Impulsado', usual: 'habitual', seen: 'visto', expected: 'esperado', tank: 'Depósito', unit: 'L/h', noCourse: 'No se sabe nada de este tiempo.',
  legend: 'Continuo: lo que hubo. Discontinuo: el cloro que el vaso suele pedir a esa hora, o el pH que las emboladas debían dar; cada ocho horas se parte de nuevo de lo visto. Cuña: una alarma o un trabajo.',
  kept: 'El servidor no responde: así estaba.', marks: 'Alarmas y trabajos en este tiempo', kinds: { alarm: 'Alarma', cleared: 'Desaparecida', job: 'Trabajo' }, open: 'Abrir la página de esta bomba',
};
