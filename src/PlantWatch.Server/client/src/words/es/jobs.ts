import type { JobState } from '../../contract.words';
import type { jobs as shape } from '../en/jobs';

// Jobs of maintenance: what is to be done, who is on it, whether it helped.

const state: Record<JobState, string> = { open: 'Abierto', in_hand: 'En curso', waiting_for_parts: 'A la espera de piezas', done: 'Hecho' };

export const jobs: typeof shape = {
  title: 'Trabajos', lead: 'Qué está averiado, quién se ocupa y si la reparación sirvió. Esto último lo dicen las propias bombas y sondas, en un día.', state,
  failed: 'Reparaciones que no sirvieron', open: 'Abiertos', in_hand: 'En curso', waiting_for_parts: 'A la espera de piezas', watched: 'Hechos, se vigila su efecto', over: 'Terminados',
  none: 'Aquí no hay trabajos.', nothing: 'No hay ninguna avería anotada.', newJob: 'Nuevo trabajo', carryOn: 'Continuar', again: 'Retomarlo', asset: 'En qué', alarm: 'Responde a la alarma', noAlarm: 'ninguna',
  seen: 'Lo que se vio', done: 'Lo que se hizo', stateLabel: 'Estado', save: 'Guardar el trabajo', needAsset: 'Falta elegir en qué.', needSeen: 'Falta lo que se vio.', needDone: 'Falta lo que se hizo.',
  linked: 'responde a una alarma', minutes: 'Minutos de trabajo, en total', needMinutes: 'Minutos enteros, de 0 a 10.080.', parts: 'Piezas puestas', part: 'Pieza', count: 'Cuántas', number: 'Su número', addPart: 'Añadir una pieza', dropPart: 'Quitar', needPart: 'Falta el nombre de la pieza y cuántas, de 1 a 10.000.',
  parted: (n: number, name: string) => `${n} \u00d7 ${name}`, worked: (m: number) => `${m}\u00a0min de trabajo`, judgedBy: 'juzgado por', since: (who: string) => `anotado primero por ${who}`, watching: 'Se vigilan las señales; un día en calma lo demuestra.',
  draft: 'Borrador guardado en este dispositivo; las fotos, una vez llegadas.', unkept: 'Este dispositivo no tiene sitio para el borrador: guardarlo antes de dejar esta página.', unsaved: 'Escritos y sin guardar', goOn: 'Seguir escribiendo',
  pictures: 'Fotos', addPicture: 'Tomar o elegir una foto', dropPicture: 'Omitir', pictureOf: 'Foto de este trabajo', pictureNo: (n: number, of: string) => `Foto ${n} de: ${of}`, pictureHint: 'De la avería y de la reparación; sin personas. Se reduce aquí, y no se envía el lugar donde se tomó.',
  pictureRefused: 'El servidor no aceptó esta foto.', going: 'en camino', waits: 'espera al servidor; sale sola mientras este formulario esté abierto', notRead: (name: string) => `${name}: no se puede leer como foto`, needPictures: 'Una foto no ha llegado: esperarla, u omitirla.',
  kit: 'Reactivos, tampones y soluciones', toKit: 'A los lotes', replaceBy: (at: string) => `reponer antes del ${at}`, noLot: 'sin lote anotado', orderNow: 'En menos de dos semanas: pedir otro.',
  planned: 'Trabajos planificados', noPlanned: 'El archivo de la instalación no planifica trabajos.', every: (d: string) => `cada ${d} días`, due: 'pendiente', overdue: 'atrasado', last: 'hecho por última vez', neverDone: 'nunca hecho aquí', writeDown: 'Anotarlo', planOf: 'planificado',
  often: 'Con qué frecuencia falló', thing: 'Elemento', failures: 'Fallos', mean: 'Tiempo medio entre fallos, días', between: 'El 90\u00a0% de las veces entre', repair: 'Tiempo medio de reparación, h', offender: 'falla una y otra vez', atLeast: (d: string) => `al menos ${d}`,
  oftenNote: 'Del último año, según los trabajos anotados aquí; los planificados no cuentan. La media es el tiempo en servicio entre los fallos, y su intervalo el de un recuento de sucesos raros: pocos fallos dicen poco.',
  assets: { circuits: 'Circuito', pools: 'Vaso', probes: 'Sonda', pumps: 'Bomba', filters: 'Filtro' },
};
