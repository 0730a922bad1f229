// Boards as files, and the display on the wall.
import type { BoardReader, TileKind } from '../../contract.boards';
import type { boards as shape } from '../en/boards';

const kinds: Record<TileKind, string> = {
  pools: 'Vasos', readout: 'Medidas', strip: 'Evolución', balance: 'Equilibrio del agua', tests: 'Últimos análisis', alarms: 'Alarmas', due: 'Pendiente', pumps: 'Bombas', probes: 'Sondas', trust: 'A qué dar crédito',
  jobs: 'Trabajos', notes: 'Anotado', clock: 'Hora',
};
const readers: Record<BoardReader, string> = { engineer: 'ingeniería de la instalación', operator: 'operación', maintenance: 'mantenimiento', manager: 'responsable de turno' };

export const boards: typeof shape = {
  kinds, readers,
  title: 'Tableros', choose: 'Cuál', none: 'No hay ningún tablero.', all: 'Todos los tableros', pool: 'Vaso', toWall: 'Mostrar en la pared', for: (who: string) => `para ${who}`, own: 'propio de esta instalación',
  noSuch: 'No existe ese tablero.', problems: (n: number) => (n === 1 ? '1 problema' : `${n} problemas`),
  lastGood: 'El archivo de este tablero tiene errores. Se ve su última versión correcta.', neverGood: 'El archivo de este tablero tiene errores y aún no hay ninguna versión correcta.',
  at: (file: string, line: number) => `${file}, línea ${line}`, tileProblem: (what: string) => `No se muestra: ${what}`,
  ownTitle: 'Tableros propios', ownHow: 'Un tablero es un archivo. Basta ponerlo en la carpeta «boards», junto al archivo de la instalación; aparece aquí en segundos, y también lo que tenga mal. Uno con el mismo nombre sustituye a un tablero de los que trae PlantWatch. Antes de usarlo se puede comprobar:',
  noPools: 'La instalación no tiene ese vaso.', noProbes: 'La instalación no tiene esa sonda.', noJobs: 'No hay trabajos abiertos.', noAlarm: 'No hay ninguna alarma.', noAlarmFrom: (priority: string) => `No hay ninguna alarma de prioridad ${priority} o superior.`,
  coming: 'Siguiente',
  deadSince: (at: string) => `desde ${at}`, neverHeard: 'aún no se ha recibido nada', heard: 'recibido', mayGoDark: 'Este navegador no mantiene la pantalla encendida.', pageOf: (n: number, of: number) => `Página ${n} de ${of}`,
  moreTiles: (n: number) => (n === 1 ? '1 parte más' : `${n} partes más`), hold: 'Fijar esta página', heldUntil: (at: string) => `Fijada hasta ${at}, seguir`, gone: 'El archivo de este tablero ya no está; así era la última vez.', triesAgain: 'Se vuelve a intentar solo.',
};
