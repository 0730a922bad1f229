import type { calibrate as shape } from '../en/calibrate';

// Calibration at the bench: a tired person is led step by step.

export const calibrate: typeof shape = {
  title: (probe: string) => `Calibrar ${probe}`, open: 'Calibrar o limpiar', due: (day: string) => `Calibración pendiente el ${day}`, overdue: (day: string) => `La calibración tocaba el ${day}`, every: (days: string) => `cada ${days} días según el archivo de la instalación`,
  stepOf: (n: number, all: number) => `Paso ${n} de ${all}`, next: 'Siguiente', back: 'Atrás', again: 'Empezar de nuevo', againAsk: '¿Tirar esta hoja y empezar de nuevo?', kept: 'Lo anotado se guarda en este dispositivo hasta la firma.',
  limits: 'Límites del archivo de la instalación', slopeLimits: (low: string, high: string) => `pendiente ${low}\u2009\u2013\u2009${high}\u00a0%`, offsetLimits: (mv: string) => `desplazamiento \u00b1${mv}\u00a0mV`, orpLimits: (mv: string) => `\u00b1${mv}\u00a0mV respecto a la solución`,
  start: {
    ph: 'Hacen falta dos tampones frescos separados al menos 2 de pH, un termómetro, agua de enjuague y un paño suave. Lleva unos diez minutos.', orp: 'Hace falta una solución de control fresca con su valor a su temperatura, un termómetro y agua de enjuague. Lleva unos cinco minutos.',
    other: 'Anotar aquí lo que se hizo en la sonda. Sus medidas no cuentan mientras se trabaja en ella.', panel: 'Este número viene del panel de la instalación: mirarlo en las soluciones, calibrar en el panel con su propio menú y volver a mirar. Aquí no se corrige nada.',
    caution: 'Cerrar las válvulas de la célula de medida antes de abrirla, y poner el regulador de dosificación en espera según la práctica de la instalación: no debe dosificar según una sonda que está fuera de su célula. PlantWatch no manda nada.',
    go: 'Sacarla y empezar', goOn: 'Seguir donde se quedó', marks: 'Desde ahora sus medidas cuentan como control de función, media hora como máximo.', busy: (who: string) => `${who} está trabajando en esta sonda.`,
  },
  working: (until: string) => `Las medidas cuentan como control de función hasta ${until}.`, notWorking: 'La media hora ha pasado: las medidas vuelven a contar como agua del vaso.', markAgain: 'Media hora más', cannotMark: 'No se llega al servidor: ahora no se pueden marcar sus medidas como control de función. Cabe seguir y teclear lo leído.',
  found: { title: 'Tal como se encontró', lead: 'Antes de limpiar o cambiar nada: ¿cuánto se desviaba? Enjuagarla y meterla tal como está.', skip: 'Tal como está no se puede medir', skipped: 'No se tomó tal como se encontró.' },
  points: { title: 'Calibrar', lead: 'Enjuagarla bien y secarla con toques, sin frotar. No llevar nunca un tampón al siguiente.' },
  place: (n: number, all: number) => (all > 1 ? `Solución ${n} de ${all}` : 'Solución'),
  which: '¿Qué frasco?', family: { technical: 'Tampones técnicos', reference: 'Tampones de referencia', unknown: '' }, other: 'Otro frasco: su etiqueta', labelValue: (unit: string) => `Valor de la etiqueta a esta temperatura${unit ? `, ${unit}` : ''}`,
  trap: 'Leer el frasco: 7,00 y 6,86 son dos tampones distintos.', quinhydrone: { phthalate: 'Quinhidrona en tampón de pH 4', phosphate: 'Quinhidrona en tampón de pH 7', unknown: '' },
  orpReference: 'Estos valores son respecto a Ag/AgCl en cloruro potásico 3,33\u00a0mol/L. Para otro electrodo de referencia, tomar la etiqueta del frasco.',
  celsius: 'Temperatura de la solución, \u00b0C', is: (value: string) => `A esta temperatura es ${value}`, outOfTable: 'La tabla no tiene valor para esta temperatura',
  bottle: 'Lote y caducidad del frasco', lot: 'Lote', expires: 'Caduca', expired: 'Este frasco está caducado: abrir uno nuevo.',
  putIn: 'Ya está en la solución', wait: 'Esperar a que se asiente', settling: (span: string, most: string) => `se movió ${span} en este tiempo; hasta ${most} cuenta como asentado`, collecting: (done: string, all: string) => `${done} de ${all}\u00a0s de medidas hasta ahora;`,
  settled: 'Asentado', take: (value: string) => `Tomar ${value}`, taken: (value: string) => `Tomado: ${value}`, takenTyped: 'tecleado', retake: 'Tomarlo otra vez', noReadings: 'No llegan medidas de esta sonda. Teclear lo leído.', noServer: 'No se llega al servidor. Teclear lo leído.',
  orType: 'o teclear lo leído', typed: 'Valor leído', inMv: 'mV', inPh: 'pH', mvHint: 'Los mV juzgan el electrodo; no cambian ninguna corrección.', leave: 'Omitir el segundo tampón', leaveHint: 'Un solo tampón da un desplazamiento y ninguna pendiente.',
  need: { celsius: 'Falta la temperatura de la solución', label: 'Falta lo que dice la etiqueta', reading: 'Esperar a que se asiente, o teclear lo leído', wrong: 'Se esperaba un número' },
  work: {
    title: 'Lo que se hizo', lead: 'Limpiarla ahora si lo necesita. Después, decir qué se hizo.', nothing: 'No se tocó nada: seguir con lo encontrado', onPanel: 'Calibrarla ahora en el panel, con su propio menú, y después seguir.', need: 'Falta decir qué se hizo, o que no se tocó nada',
    kinds: { cleaned: 'Limpiada', electrode_replaced: 'Electrodo nuevo', polished: 'Pulida', membrane_replaced: 'Membrana nueva', electrolyte_refilled: 'Electrolito nuevo' },
    starts: { cleaned: '', electrode_replaced: 'Lo aprendido del electrodo viejo ya no cuenta.', polished: 'La recta aprendida de este vaso empieza de nuevo.', membrane_replaced: 'Lo aprendido de esta sonda empieza de nuevo.', electrolyte_refilled: 'Lo aprendido de esta sonda empieza de nuevo.' },
  },
  result: {
    title: 'Resultado', computing: 'Calculando\u2026', slope: 'Pendiente', offset: 'Desplazamiento', foundBy: 'Tal como se encontró se desviaba', leftBy: 'Según las últimas medidas, tras firmar', verdict: { within: 'Dentro de los límites', outside: 'Fuera de los límites', unknown: 'No se midió nada' },
    what: { offset: 'Firmar mueve su valor con un desplazamiento, desde ahora.', two_point: 'Firmar corrige pendiente y desplazamiento, desde ahora.', verification: 'Firmar no cambia ninguna corrección.', panel_adjustment: 'Firmar anota lo que se ajustó en el panel.' },
    waits: 'Firmar aún no cambia nada: tiene que aprobarlo una segunda persona.', review: 'Otra persona lo revisa después.', noServer: 'No se llega al servidor. La hoja queda en este dispositivo: volver para firmarla.', putBack: 'Devolverla a su célula, abrir las válvulas y quitar la espera del regulador de dosificación cuando el valor se haya asentado.',
    sign: 'Firmar', note: 'Observación', signLead: 'Devolver antes la sonda a su sitio.',
  },
  done: { title: 'Firmado', held: 'Vale desde ahora.', waiting: 'Espera a una segunda persona.', sheet: 'Mostrar la hoja', probe: 'Volver a la sonda', check: 'Ahora conviene un análisis manual: sonda y análisis deberían concordar.' },
  sheet: {
    title: 'Hoja de calibración', by: 'Hecha por', from: 'Fuera de la célula', to: 'De vuelta en la célula', work: 'Intervención', none: 'ninguna', basis: 'Frente a', asFound: 'Como se encontró', measured: 'Calibrada con', asLeft: 'Como se dejó', solution: 'Solución', temperature: '\u00b0C', known: 'Verdadero', read: 'Leído', error: 'Error', lot: 'Lote, caducidad',
    verdict: 'Veredicto', correction: 'Corrección', held: 'antes', holds: 'ahora', reviewer: 'Revisada por', notReviewed: 'aún sin revisar', objected: 'Objetada por', print: 'Imprimir', remark: 'Observación', settled: 'asentado', typed: 'tecleado', id: 'Hoja', notMeasured: 'sin medir', afterCorrection: 'calculado con las mismas medidas bajo la corrección nueva',
    buffer: { technical: (ph: string) => `Técnico ${ph}`, reference: (ph: string) => `De referencia ${ph}` },
    basisOf: { unknown: 'no se midió nada', checks: 'análisis manuales', buffers: 'tampones', check_solution: 'solución de control' }, common: 'Límites e intervalo del archivo de la instalación; donde no dice nada, son práctica habitual.',
  },
  unseen: (probe: string) => `${probe}: una calibración espera una segunda mirada`,
  review: { title: 'Espera una segunda mirada', lead: (who: string) => `Lo hizo ${who}. Otra persona lo repasa: frascos, lecturas, veredicto.`, accept: 'Revisada, vale', object: 'Objetar', why: 'Lo que se vio, o lo que está mal' },
  drift: { slope: (day: string) => `Por su pendiente estará gastada hacia el ${day}`, earliest: (day: string) => `(no antes del ${day})`, title: 'De calibración en calibración', perMonth: (v: string, u: string) => `${v} \u00b1 ${u} al mes`, of: (n: number) => (n === 1 ? 'en 1 intervalo' : `en ${n} intervalos`) },
};
