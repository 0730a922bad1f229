import type { paper as shape } from '../en/paper';

/** Sheets for paper, and the view for an inspector. */
export const paper: typeof shape = {
  title: 'Hojas', lead: 'Hojas para imprimir, archivar o entregar. Cada una dice quién la imprimió y de qué registro, y muestra las correcciones como correcciones.',
  kind: 'Hoja', kinds: { 'day-log': 'Hoja del día', month: 'Registro del mes', calibration: 'Registro de calibración de sondas', 'alarms-and-jobs': 'Alarmas y mantenimiento', inspection: 'Registro para inspección' } as Record<string, string>,
  says: {
    'day-log': 'Análisis por orden de hora con las rondas no hechas, las sondas al lado, límites, dosis, incumplimientos, alarmas, trabajos, personas, firmas.',
    month: 'Una línea por día con mínimo, media y máximo, incumplimientos, laboratorio, y cuánto tiempo estuvieron presentes las sondas.',
    calibration: 'Lo que se hizo en cada sonda, en qué soluciones, qué se corrigió en su registro y cuánto vale cada día de él.',
    'alarms-and-jobs': 'Alarmas por regla y una a una, incumplimientos, trabajos y trabajos planificados.',
    inspection: 'Primero lo analizado y leído, incumplimientos con su cierre, correcciones, personas; lo calculado va al final.',
  } as Record<string, string>,
  pools: 'Vasos', day: 'Día', to: 'Hasta, inclusive', month: 'Mes', name: 'Impreso por', needName: 'Falta quién la imprime', needPool: 'Falta elegir un vaso', needDay: 'Falta elegir un día', needMonth: 'Dar el mes con año y número, como 2026-03', order: 'El último día es anterior al primero',
  clock: (zone: string) => `Los días son los de ${zone}.`, open: 'Abrir para leer o imprimir', file: (ending: string) => ending.toUpperCase(),
  inspect: 'Para una inspección', inspectLead: 'En dos pasos: qué vasos y días, y después lo que el registro dice de ellos. Primero va lo analizado y leído; al final, lo calculado.', toInspect: 'Para una inspección, en dos pasos', stepOne: 'Qué vasos y días', fromDay: 'Desde', looks: 'Quién mira', show: 'Mostrar el registro', back: 'Otros vasos o días',
};
