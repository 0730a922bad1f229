import type { filters as shape } from '../en/filters';

// Circulation and filters of a circuit, and the washing of them.
export const filters: typeof shape = {
  title: 'Recirculación y filtros', flow: 'Recirculación', low: (limit: string) => `bajo por debajo de ${limit}`, isLow: 'bajo', noFlow: 'sin medir',
  across: 'de pérdida de carga', clean: (text: string) => `limpio ${text}`, rise: (now: string, due: string) => `ha subido ${now}; toca lavar a ${due}`, noPressure: 'Presión sin medir.', noClean: 'pérdida con filtro limpio aún desconocida',
  washed: 'Lavado', by: (name: string) => `por ${name}`, never: 'Aún sin lavado anotado', every: (days: string) => `a más tardar cada ${days} días`, due: 'toca lavar',
  turnover: 'Tiempo de recirculación', takes: (hours: string, mean: string) => `${hours} a ${mean}, la media de la última hora`, design: (hours: string, flow: string) => `previsto ${hours} a ${flow}`, short: 'no llega', noHour: 'aún sin una hora completa',
  rate: (speed: string) => `${speed} a través de los lechos`,
  drained: (m3: string) => `${m3} vaciados`, water: 'Agua vaciada, m\u00b3', usual: (m3: string) => `Si queda vacío cuentan los ${m3} habituales. Es dilución: agua nueva ocupa su lugar.`, noUsual: 'Caudal del lavado por sus minutos, con el aclarado. Es dilución: agua nueva ocupa su lugar.',
  needWater: 'Dar el agua como número de metros cúbicos, o dejarlo vacío.',
  emptied: 'Vaciado', neverEmptied: 'Aún sin vaciado anotado', emptyDue: 'toca vaciar', noteEmptied: 'Anotar un vaciado', emptyRise: (now: string, due: string) => `ha subido ${now}; toca vaciar a ${due}`,
  emptyHint: 'Parar la bomba y cerrar sus válvulas antes de abrir la tapa, como diga su fabricante; la dosificación tiene que haberse parado antes.',
  emptyNoted: (name: string) => `Anotado el vaciado de ${name}.`,
  begin: 'Empezar un lavado', note: 'Anotar un lavado', done: 'Ya está lavado', giveUp: 'Terminar sin lavado', cancel: 'Dejarlo',
  under: (name: string) => `Lavado a contracorriente por ${name}`, until: (time: string) => `termina solo a las ${time}; hasta entonces caudal, presión y células de medida no llaman a nadie`,
  quietUntil: (time: string, quiet: string) => `termina solo a las ${time}; caudal, presión y células de medida no llaman a nadie hasta las ${quiet}; entonces se agota la hora de silencio de este filtro en doce`,
  noQuiet: (time: string) => `termina solo a las ${time}; las alarmas llaman igualmente, porque la hora de silencio de este filtro en doce está agotada`,
  why: 'Por qué otro', whyHint: 'El último lavado de este filtro es reciente, y su presión no pide otro.', needWhy: 'Falta por qué otro.',
  hint: 'Parar antes la dosificación, mantener fuera a los bañistas y seguir las instrucciones del fabricante y las normas propias. PlantWatch no mueve ninguna válvula: solo sabe lo que se le dice.',
  noted: (name: string) => `Anotado el lavado de ${name}. Su pérdida con filtro limpio se toma de la media hora siguiente.`,
  begun: (name: string) => `${name}: lavado empezado.`, ended: (name: string) => `${name}: lavado terminado.`,
};
