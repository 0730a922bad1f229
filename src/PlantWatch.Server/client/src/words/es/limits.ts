// Limit packs: what was picked, what is confirmed, what holds.
import type { Holds, LimitsWord, RowGrade, RowProvenance } from '../../contract.limits';
import type { limits as shape } from '../en/limits';

const rows = (n: number) => (n === 1 ? '1 fila' : `${n} filas`);

export const limits: typeof shape = {
  title: 'Límites', loading: 'Se piden los límites.',
  lead: 'Un juego de límites es una copia de lo que pide una autoridad. Una fila no limita nada hasta que una persona la ha cotejado con el propio documento. La normativa local va antes.',
  noPack: 'No se ha elegido ningún juego de límites.',
  noPackMeans: 'Solo se vigilan los límites que el propio archivo de la instalación da a sus vasos, y nadie los ha cotejado aquí con una norma. Para seguir a una autoridad, nombrar su juego en el archivo de la instalación y volver a leerlo:',
  noPackKey: 'limit_pack: who-2006', noPackList: 'Juegos que vienen con el servidor',
  superseded: 'sustituido', supersededMeans: 'Una edición más reciente lo ha sustituido.',
  progress: (done: number, all: number) => `${done} de ${rows(all)} ${all === 1 ? 'confirmada' : 'confirmadas'}`,
  allDone: 'Están confirmadas todas las filas que afectan a estos vasos.',
  filter: 'Solo las filas que afectan a mis vasos', shown: (n: number, all: number) => `se muestran ${n} de ${all}`, noneShown: 'Ninguna fila de este juego afecta a estos vasos.',
  by: 'Quién confirma', document: 'Documento y apartado a la vista', documentHint: 'Por ejemplo título, edición y sección. Se guarda en este dispositivo para la fila siguiente.',
  may: (names: string) => `Pueden confirmar: ${names}.`, anybody: 'Si el archivo de la instalación no lista personas, puede confirmar cualquiera; si las lista, ingeniería o administración.',
  needDocument: 'Falta nombrar el documento y el apartado a la vista.', needWhy: 'Falta por qué se retira.',
  confirm: 'Confirmar', notHere: 'No afecta a esta instalación', revoke: 'Retirar', why: 'Motivo', cancel: 'Dejarlo', send: 'Retirarla',
  confirmedBy: (by: string, at: string) => `Confirmada por ${by}, ${at}`, judgedAway: (by: string, at: string) => `No afecta a esta instalación, según ${by}, ${at}`,
  waits: 'Sin confirmar', changed: 'Esta fila ha cambiado desde que se confirmó y espera una nueva confirmación.',
  toJudge: 'A juzgar por una persona', pools: 'Vasos', source: 'Fuente', readOnly: 'Para leer: no fija ningún valor que se vigile.',
  raises: (by: string) => `sube el mínimo en ${by}`, least: (v: string) => `\u2265 ${v}`, most: (v: string) => `\u2264 ${v}`, between: (a: string, b: string) => `de ${a} a ${b}`,
  holds: { yes: 'rige', unknown: 'no se sabe', no: 'no rige' } as Record<Holds, string>,
  grades: { operating: 'límite de funcionamiento', closure: 'cierra el vaso', guide: 'orientación, nunca una alarma' } as Record<RowGrade, string>,
  provenance: {
    from_memory: 'De memoria: cotejar con el documento', secondary: 'Visto de segunda mano: cotejar con el documento', published: 'Visto en el documento o en una página oficial',
  } as Record<RowProvenance, string>,
  stops: 'Paros que siempre rigen', stopsMean: 'Fuera de ellos nadie debería estar en el agua, digan lo que digan los límites. Práctica habitual; la normativa local va antes.',
  stopsEdit: 'El archivo de la instalación puede estrechar uno, con un motivo; ensancharlo requiere el nombre de un administrador. Ninguno puede quitarse.',
  bottom: 'Fondo del vaso', bottomSeen: 'debe verse', usual: (range: string) => `de ordinario ${range}`, stopBy: (by: string) => `responde de ello ${by}`,
  now: 'Lo que rige ahora', own: 'propio de la instalación', noBounds: 'No se vigila nada.',
  byBalance: 'Se compara con el equilibrio que da una serie completa de análisis (R-018): pH, alcalinidad, dureza cálcica y temperatura.', byStop: 'Lo vigila el paro: cada análisis pregunta si se ve el fondo.',
  undecided: 'No puede decidirse', notMeasured: 'Aquí no se mide', notMeasuredMeans: 'El vaso no tiene sonda para ello y la autoridad no la exige. Nada espera a estas filas.',
  turned: (range: string, own: string) => `Se vigila como ${range} respecto a ${own}, el electrodo de la sonda del vaso.`,
  turnedFrom: (against: string) => `La fila es respecto a ${against}: convertida con los potenciales a 25\u00a0\u00b0C.`,
  turnedOpen: (against: string, spread: string) => `La fila dice ${against} sin su relleno, lo que deja ${spread}\u00a0mV de duda: se toma el extremo más estricto.`,
  turnedUnnamed: (spread: string) => `La fila no nombra ningún electrodo, lo que deja ${spread}\u00a0mV de duda entre los que llevan las sondas: se toma el extremo más estricto.`, showRow: 'Mostrar la fila',
  words: { none: 'Sin límites', unconfirmed: 'Sin límites vigentes: hay filas sin confirmar', own_only: 'Límites propios de la instalación', in_force: 'Límites vigentes' } as Record<LimitsWord, string>,
  poolWaits: (n: number) => `Sin límites vigentes: ${rows(n)} sin confirmar`, poolNone: 'Sin límites: este vaso no tiene ninguno', poolOwn: 'Se vigilan los límites propios de la instalación',
};
