import type { nav as shape } from '../en/nav';

/** Names of the pages in the navigation and of the groups they stand in. */
export const nav: typeof shape = {
  habits: {
    title: 'En este dispositivo', language: 'Idioma', asBrowser: (name: string) => `Como el navegador (${name})`, units: 'Unidades', asSite: 'Como la instalación', metric: 'Métricas', us: 'De EE.\u00a0UU.', imperial: 'Imperiales',
    hint: 'Los valores se guardan en SI; galones y libras solo aparecen al lado. Al teclear un número valen la coma y el punto.',
  },
  more: 'Más', moreTitle: 'Más páginas',
  groups: { water: 'Agua', alarms: 'Alarmas y límites', plant: 'Instalación', record: 'Registro' },
  pages: {
    plantRound: 'Ronda técnica', instruments: 'Instrumentos', round: 'Ronda', laboratory: 'Laboratorio', reagents: 'Reactivos', chemicals: 'Productos químicos', limits: 'Límites', rules: 'Reglas', exceptions: 'Incumplimientos', alarmHealth: 'Salud de las alarmas', whatIfLimits: 'Y si, límites', telling: 'Avisos a personas', jobs: 'Trabajos', handover: 'Relevo', paper: 'Hojas', boards: 'Tableros',
    plantFile: 'Ajustes de la instalación',
  },
};
