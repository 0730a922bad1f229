// Words of the pages that do not come from the server; the subjects of the water have files of their own beside this one.
import type {
  AlarmChange, AlarmState, CalibrationKind, CalibrationStatus, Measurand, PoolWord, Priority, PumpActivity, SamplePoint, Standing, TestMethod,
  Tier, Verdict,
} from '../../contract';
import type { frame as shape } from '../en/frame';
import { inText } from './inText';

const measurand: Record<Measurand, string> = {
  none: '', ph: 'pH', orp: 'Redox', temperature: 'Temperatura', conductivity: 'Conductividad', free_chlorine: 'Cloro libre',
  total_chlorine: 'Cloro total', combined_chlorine: 'Cloro combinado', total_alkalinity: 'Alcalinidad total',
  calcium_hardness: 'Dureza cálcica', cyanuric_acid: 'Ácido cianúrico', dissolved_solids: 'Sólidos disueltos', sample_flow: 'Caudal de muestra', circulation_flow: 'Recirculación', filter_pressure: 'Presión del filtro', turbidity: 'Turbidez', bromine: 'Bromo total',
};
const pool: Record<PoolWord, string> = {
  unknown: 'Desconocido', normal: 'Normal', due: 'Análisis pendiente', attention: 'Atención', alarm: 'Alarma', stop: 'Paro',
};
const standing: Record<Standing, string> = {
  unknown: 'Aún sin indicios', good: 'Bueno', maintenance_required: 'Mantenimiento necesario', out_of_specification: 'Fuera de especificación',
  check_function: 'Control de función', failure: 'Fallo',
};
const standingShort: Record<Standing, string> = {
  unknown: 'sin indicios', good: 'bueno', maintenance_required: 'mantenimiento', out_of_specification: 'fuera de espec.',
  check_function: 'control', failure: 'fallo',
};
const verdict: Record<Verdict, string> = {
  not_comparable: 'No comparable', agrees: 'Concuerda', probe_drifts: 'La sonda deriva', check_suspect: 'El análisis queda aislado: repetirlo',
  learning: 'Aún aprende',
};
const priority: Record<Priority, string> = { note: 'Nota', low: 'Baja', medium: 'Media', high: 'Alta', critical: 'Crítica' };
const alarmState: Record<AlarmState, string> = {
  normal: 'Normal', unacknowledged: 'Activa, sin reconocer', acknowledged: 'Activa, reconocida',
  returned_unacknowledged: 'Desaparecida, sin reconocer', latched_unacknowledged: 'Enclavada, sin reconocer',
  latched_acknowledged: 'Enclavada, reconocida', shelved: 'Aplazada', suppressed_by_design: 'Inhibida por diseño', out_of_service: 'Fuera de servicio',
};
/** What an alarm may be about beside a measurand: two tests together, or what a laboratory counts. */
const watched: Record<string, string> = {
  combined_per_free: 'cloro combinado respecto al libre', combined_per_total: 'cloro combinado respecto al total', cyanurate_per_free: 'ácido cianúrico respecto al cloro libre',
  colony_count: 'recuento de colonias', escherichia_coli: 'E. coli', pseudomonas_aeruginosa: 'Pseudomonas aeruginosa', legionella: 'Legionella',
};
const alarmChange: Record<AlarmChange, string> = {
  none: '', raised: 'Activada', cleared: 'Desaparecida', acknowledged: 'Reconocida', shelved: 'Aplazada', unshelved: 'Fin del aplazamiento',
  suppressed: 'Inhibida por diseño', released: 'Inhibición levantada', reset: 'Rearmada', retired: 'Retirada',
  taken_out_of_service: 'Puesta fuera de servicio', returned_to_service: 'Devuelta al servicio', re_alarmed: 'Sigue activa, avisada de nuevo', made_safe: 'Puesta en seguridad anotada',
};
const pump: Record<PumpActivity, string> = { unknown: 'Aún sin noticias', stopped: 'Parada', running: 'En marcha', fault: 'Avería' };
const method: Record<TestMethod, string> = {
  unknown: 'sin indicar', photometer: 'fotómetro', comparator: 'comparador', tablet_count: 'recuento de tabletas', meter: 'medidor portátil',
};
const point: Record<SamplePoint, string> = {
  unknown: 'Sin indicar', pool: 'En el vaso', cell: 'Salida de la célula de medida', balance_tank: 'Vaso de compensación', outlet: 'Punto más bajo o salida del vaso',
};
const calibrationKind: Record<CalibrationKind, string> = {
  offset: 'Desplazamiento', two_point: 'Pendiente a dos puntos', panel_adjustment: 'Ajuste del panel de la instalación',
  verification: 'Verificada, sin cambios',
};
const calibrationStatus: Record<CalibrationStatus, string> = {
  proposed: 'Propuesta', approved: 'Aprobada', rejected: 'Rechazada', adjusted: 'Hecha en el panel',
};
const tier: Record<Tier, string> = {
  raw: 'medidas sueltas', minute: '1 minuto', quarter_hour: '15 minutos', hour: '1 hora', day: '1 día',
};
const kinds: Record<string, string> = {
  swimming: 'natación', teaching: 'enseñanza', leisure: 'recreo', therapy: 'hidroterapia', spa: 'hidromasaje', plunge: 'inmersión', paddling: 'chapoteo',
  indoor: 'cubierto', outdoor: 'al aire libre', chlorine: 'cloro', stabilised_chlorine: 'cloro estabilizado', salt_electrolysis: 'electrólisis salina',
  bromine: 'bromo', uv: 'UV', ozone: 'ozono',
};
const balance: Record<string, string> = { corrosive: 'agresiva', balanced: 'equilibrada', scale_forming: 'incrustante' };

export const frame: typeof shape = {
  measurand, watched, pool, standing, standingShort, verdict, priority, alarmState, alarmChange, pump, method, point, calibrationKind,
  calibrationStatus, tier, kinds, balance, inText, quoted: (text: string) => `«${text}»`,
  product: 'PlantWatch',
  ago: (age: string) => `hace ${age}`,
  flow: 'caudal', noFlow: 'sin caudal',
  below: (v: string) => `por debajo de ${v}`, above: (v: string) => `por encima de ${v}`,
  justNow: 'ahora',
  never: 'nunca',
  nav: { overview: 'Vasos', check: 'Análisis', alarms: 'Alarmas', pumps: 'Bombas', record: 'Registro', skip: 'Ir al contenido', label: 'Páginas' },
  theme: { label: 'Claro u oscuro', auto: 'Auto', light: 'Claro', dark: 'Oscuro' },
  live: {
    live: 'En vivo', connecting: 'Conectando', not: 'Sin conexión',
    banner: 'Sin conexión', since: (clock: string) => `desde ${clock}.`, silentFor: (age: string) => `(${age})`,
    first: 'El servidor aún no responde. Se vuelve a intentar solo.', values: 'Se ve lo último que se recibió. Se vuelve a intentar solo.',
    plantFile: 'El último archivo de la instalación no se aceptó; sigue vigente el anterior.',
    last: (state: string) => `último: ${state}`,
  },
  bar: {
    more: (n: number) => `${n} más`, nothing: 'No se vigila nada',
    none: 'Sin alarmas', noneThen: 'Sin alarmas en la última recepción', noneButUnknown: (n: number) => (n === 1 ? 'Sin alarmas, pero de un vaso no se sabe nada' : `Sin alarmas, pero de ${n} vasos no se sabe nada`), label: 'Alarmas', allSeen: 'Todas reconocidas', unknown: 'Alarmas desconocidas',
    dead: 'Sin conexión', outOfService: (n: number) => `${n} fuera de servicio`,
    state: {
      normal: '', unacknowledged: 'nueva', acknowledged: 'vista', returned_unacknowledged: 'desaparecida', latched_unacknowledged: 'enclavada', latched_acknowledged: 'enclavada',
      shelved: 'aplazada', suppressed_by_design: 'inhibida', out_of_service: 'fuera de servicio',
    } satisfies Record<AlarmState, string>,
    title: { dead: (own: string) => `Sin conexión \u00b7 ${own}`, calls: (n: number, own: string) => `(${n}) \u25b2 ${own}` },
  },
  overview: {
    title: 'Vasos', empty: 'Aún no hay un archivo de la instalación vigente, así que no hay vaso que mostrar.', begin: 'Empezar por los primeros pasos', waiting: 'Se espera al servidor.',
    noState: 'Aún no se sabe nada de este vaso.', check: 'Anotar un análisis', open: 'Abrir el vaso', tests: 'Últimos análisis', balance: 'Índice de saturación',
    noTest: 'aún sin analizar', due: 'Pendiente', overdue: 'Atrasado', dueAt: (what: string, clock: string) => `${what} a las ${clock}`, more: (n: number) => `y ${n} más`,
    suspect: 'en duda', notVisible: 'El fondo no se veía en la última observación', shared: 'Agua común del circuito', last: 'últimas 3 horas',
    noLimits: 'No hay límites vigentes, así que nada puede llamarse normal.', allWell: 'Dentro de los límites, sondas fiables, nada pendiente.', alarmsStand: (n: number): string => (n === 1 ? '1 alarma activa' : `${n} alarmas activas`), alarmsGone: (n: number) => (n === 1 ? 'desaparecida, sin reconocer' : 'desaparecidas, sin reconocer'), alarmsWord: (n: number): string => (n === 1 ? 'alarma' : 'alarmas'), limit: 'límites', silent: 'muda', doubted: 'en duda', believed: (v: string, u: string) => `aceptado ${v}\u00a0\u00b1\u00a0${u}`, noReading: 'aún sin medida',
  },
  check: {
    title: 'Análisis manual', pool: 'Vaso', who: 'Quién analizó', when: 'Muestra tomada a las', now: 'Ahora', siteClock: 'según el reloj de la instalación',
    point: 'Punto de muestreo', place: 'Lugar exacto', placeHint: 'por ejemplo: zona profunda, izquierda, a 30 cm',
    results: 'Desinfectante, pH, temperatura', bromineHint: 'Como Br\u2082. Lo que indica un programa de cloro, por 2,25, es bromo.', balance: 'Análisis de equilibrio', panel: 'Lo que indica el panel', panelHint: 'Leer en el momento de la muestra.', panelAsked: 'Las bombas obedecen a este número. Leer en el momento de la muestra.', panelOthers: 'Otros números del panel',
    receivedNow: (v: string) => `Se recibe ahora ${v}`, testedNow: (v: string) => `análisis ${v}`, panelDiffers: 'No es el número que se recibe: mirar su escala, su unidad o de qué sonda es.',
    around: 'Alrededor del vaso', method: 'Método', bound: 'Valor o cota', equals: '=', below: '< bajo el rango', above: '> sobre el rango',
    dilution: 'Dilución', dilutionHint: 'Diluido una parte en', result: (v: string) => `resultado ${v}`, combined: 'Cloro combinado',
    combinedMissing: 'aparece al teclear libre y total', freeAboveTotal: 'El libre supera al total. Uno de los dos está mal: repetir el análisis.',
    bottom: 'Fondo visible', yes: 'Sí', no: 'No', notLooked: 'Sin mirar', bathers: 'Bañistas en el agua', note: 'Nota', submit: 'Guardar el análisis',
    sending: 'Guardando\u2026', another: 'Anotar otro análisis', clear: 'Vaciar el formulario', clearSure: '¿Borrar todo lo tecleado?', kept: 'Borrador guardado en este dispositivo.',
    notNumber: 'No es un número. Cifras con una coma o un punto.', negative: 'No puede ser negativo.', whole: 'Un número entero, por favor.', needWho: 'Falta quién analizó.', needPool: 'Falta elegir el vaso.',
    needTime: 'Falta fecha y hora.', future: 'Está en el futuro.', needSomething: 'Falta al menos un resultado o una observación.',
    phRange: 'El pH está entre 0 y 14.', dilutionLow: 'Uno o más.', mend: (n: number) => (n === 1 ? 'Hay que corregir un campo.' : `Hay que corregir ${n} campos.`),
    noPools: 'Este dispositivo aún no conoce los vasos de la instalación. Basta conectarse una vez; después el formulario funciona también sin cobertura.',
    storageFull: 'Este navegador no puede guardar el análisis. Sigue en el formulario; volver a intentarlo cuando se llegue al servidor.',
  },
  answer: {
    saved: 'Análisis guardado', panel: 'Panel', believed: 'Aceptado', probe: 'Sonda', test: 'Análisis', expected: 'Esperado', difference: 'Diferencia', noProbes: 'Ninguna sonda que comparar con este análisis.', remarks: 'Merece otra mirada', inDoubt: 'de un análisis en duda', notJudged: 'Aún no se ha juzgado nada: hasta entonces vale lo medido, y las instrucciones de la propia instalación.',
    queued: 'Guardado en este dispositivo', queuedMore: 'No se llega al servidor. El análisis sale solo en cuanto se pueda.', arrived: 'Ya se ha enviado.',
    refused: 'El servidor rechazó este análisis', refusedMore: 'Corregir los campos marcados y guardar de nuevo. No se ha perdido nada.',
    refusedBare: 'El servidor lo rechazó sin indicar ningún campo.',
  },
  outbox: {
    title: 'En este dispositivo', waiting: 'por enviar', refused: 'Rechazado', edit: 'Abrir en el formulario', drop: 'Descartar', dropSure: '¿Descartar este análisis para siempre?',
    sendNow: 'Intentar ahora', keepsTime: (time: string) => `Conserva su hora: ${time}.`, timeNow: 'Poner la hora actual', badge: (n: number) => `${n} por enviar`,
  },
  strips: {
    gap: 'sin medida', partFlow: (percent: string) => `con caudal el ${percent}\u00a0% del tiempo`, corrected: 'corregido', raw: 'bruto', test: 'análisis', expected: 'esperado según el análisis', failed: 'No se pueden obtener las medidas.', empty: 'No hay medidas en este tiempo.',
    tier: (t: string) => `media y dispersión de ${t}`, against: (e: string) => `respecto a ${e}`, noTests: 'No hay análisis en este tiempo.', testsOnly: 'análisis', now: 'Ahora',
    range: 'Tiempo mostrado', earlier: 'Antes', later: 'Después', closer: 'Acercar', wider: 'Alejar', label: 'Evolución',
    spans: { hour: 'Hora', six_hours: '6 h', day: 'Día', week: 'Semana', month: 'Mes', year: 'Año', five_years: '5 años' },
    legend: '\u25c6 análisis con su incertidumbre \u00b7 \u2504 bruto junto a \u2501 corregido \u00b7 sombreado: límites.',
    touch: 'Arrastrar para mover, pellizcar para ampliar.', keys: 'La rueda (tras un clic) también amplía; teclas: flechas, Re Pág y Av Pág, + y \u2212; Inicio vuelve a ahora.',
  },
  poolPage: {
    balance: 'Equilibrio del agua', hocl: 'Cloro libre presente como HOCl',
    manual: 'Últimos análisis', measurand: 'Qué', value: 'Valor', method: 'Método', age: 'Antigüedad', probes: 'Sondas', standing: 'Estado', bias: 'Sesgo', believed: 'Aceptado', panel: 'Panel',
    testColumn: 'Análisis', expectedColumn: 'Esperado', reads: 'Marca', pumps: 'Bombas dosificadoras', due: 'Pendiente', nothingDue: 'No hay nada pendiente.', alarms: 'Alarmas abiertas', noAlarms: 'Ninguna alarma abierta.', checks: 'Análisis de los últimos 14 días', noChecks: 'Ningún análisis en los últimos 14 días.',
    bathers: 'Bañistas', bottom: 'Fondo', visible: 'visible', notVisible: 'no visible', origin: { raw: 'señal propia', panel_scaled: 'como lo muestra el panel' }, noProbes: 'Este vaso no tiene sonda.', noPumps: 'Ninguna bomba dosificadora.',
    common: 'retorno común', volume: (v: string) => `${v}\u00a0m\u00b3`, noTests: 'Aún no se ha analizado nada.', turnover: (h: string) => `recirculación en ${h}\u00a0h`,
  },
  alarms: {
    title: 'Alarmas', standing: 'Activas ahora', none: 'Ninguna alarma activa.', cause: 'Causa', consequence: 'Si no se hace nada', action: 'Qué hacer', time: 'Tiempo para responder', acknowledge: 'Reconocer', reset: 'Rearmar', oneShot: 'Solo hasta que desaparezca', shelve: 'Aplazar',
    unshelve: 'Quitar el aplazamiento', comment: 'Comentario', why: 'Motivo', needWhy: 'Falta el motivo.', shelveFor: 'Aplazar durante', minutes: (n: number) => `${n} minutos`,
    hours: (n: number) => (n === 1 ? '1 hora' : `${n} horas`), raised: 'Activada', cleared: 'desaparecida', acknowledgedBy: (who: string) => `reconocida por ${who}`,
    shelvedBy: (who: string, until: string) => `aplazada por ${who} hasta ${until}`, history: 'Los últimos 7 días', noHistory: 'No pasó nada en los últimos 7 días.',
  },
  pumps: {
    title: 'Bombas', since: 'desde hace', low: 'rellenar', write: 'Anotar un trabajo', notes: 'Trabajos en bombas y sondas', newNote: 'Nuevo trabajo',
  },
  record: {
    title: 'Registro', sumsTitle: 'Sumas de cierre', explain: 'Todo lo que llegó tiene su cuenta: recibido = guardado + duplicados + rechazados + en curso.',
    sums: { received: 'recibido', stored: 'guardado', duplicates: 'duplicados', refused: 'rechazados', inFlight: 'en curso' },
    closes: 'Las sumas cuadran.', open: 'Las sumas no cuadran: faltan medidas o se contaron dos veces.',
    identity: (device: string, packet: string, atLeast: string) => `Guardado según la hora del aparato ${device}, según el paquete ${packet}, al menos una vez ${atLeast}.`,
    messages: (n: string) => `${n} mensajes.`, circuit: 'Circuito', unclaimed: 'Temas que nadie reclama', refusals: 'Elementos rechazados', noRefusals: 'No se rechazó nada.', bytes: (n: string) => `${n} bytes`, noText: '(vacío)',
  },
  probe: {
    noBias: 'Aún no se ha podido comparar ningún análisis con esta sonda.', biasLabel: (v: string, u: string) => `Sesgo en el tiempo, ahora ${v} \u00b1 ${u}`, biasTitle: 'Sesgo tras cada análisis: lo que marcó menos lo que debía',
    offer: 'Propuesto a partir de los análisis', noOffer: 'No se propone ninguna calibración', adjustPanel: (a: string) => `cambiar el valor del panel en ${a}`, shift: (a: string) => `corregido = bruto ${a}`, slope: (s: string, a: string) => `corregido = ${s} \u00d7 bruto ${a}`,
    restsOn: (n: number) => (n === 1 ? 'Se apoya en 1 análisis.' : `Se apoya en ${n} análisis.`), judged: 'juzgado', raw: 'Según marca', corrected: 'Corregido', olderChecks: (n: number) => `Mostrar ${n} anteriores`, panelHint: 'Las bombas obedecen al panel, así que es el panel lo que debe quedar bien; aquí no se corrige además.',
    rawHint: 'Las medidas brutas no se cambian nunca; la corrección vale a partir de un momento.', propose: 'Proponerla', waiting: 'Pendiente de decisión', proposedBy: (who: string, at: string) => `propuesta por ${who}, ${at}`,
    engineer: 'Ingeniería', doneAt: 'Hecho en el panel a las', holdsFrom: 'Vale desde', markDone: 'Marcar como hecho en el panel', approve: 'Aprobar', reject: 'Rechazar', history: 'Calibraciones', noHistory: 'Nunca calibrada aquí.',
    decidedBy: (what: string, who: string, at: string) => `${what} por ${who}, ${at}`, range: (r: string) => `rango ${r}`, judgements: 'Lo que dijeron los análisis', noJudgements: 'Aún no hay análisis.',
  },
  pageMissing: 'Esa página no existe.', back: 'Volver a los vasos', retry: 'Reintentar', loading: 'Cargando\u2026',
  error: { unreachable: 'No se llega al servidor.', kept: 'Lo tecleado sigue aquí; volver a intentarlo.', refused: 'Rechazado' },
  name: 'Nombre', needName: 'Falta el nombre.', cancel: 'Cancelar',
};
