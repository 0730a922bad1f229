// The page of a probe: which to believe, and what to do now.
import type { Believe } from '../../contract.probe';
import type { probePage as shape } from '../en/probePage';

export const probePage: typeof shape = {
  whom: { neither: 'No fiarse de ninguno por sí solo', probe: 'Fiarse de la sonda', tests: 'Fiarse de los análisis', either: 'Concuerdan' } as Record<Believe, string>,
  believed: 'Aceptado', shows: 'La sonda marca', lastTest: 'Último análisis', expected: 'Esperado', noTest: 'aún sin análisis', notBelieved: 'aún no se sabe', orpAsRead: 'según marca',
  testDoubted: 'en duda', doNow: 'Qué hacer ahora', doNext: 'Por hacer', then: 'después', calibrate: 'Calibrar', toDecision: 'A la decisión', writeFault: 'Anotar una avería', enter: 'Anotar un análisis',
  kept: 'El servidor no responde: esto es lo último que se recibió.',
  restsOn: (n: number) => (n === 1 ? 'Se apoya en 1 análisis, muestra de' : `Se apoya en ${n} análisis, la última muestra de`),
  drift: 'Deriva', aMonth: 'al mes', sensitivity: 'Sensibilidad', testsOff: 'Error común de los análisis', figures: 'Cifras',
  bias: {
    title: 'Cuánto se desvía, en el tiempo', now: 'ahora', maintenance: 'mantenimiento', out: 'fuera de especificación', reads: 'marca de más', readsLow: 'marca de menos',
    legend: '\u25cf tras un análisis, con su intervalo (k = 2) \u00b7 \u25c7 análisis apartado \u00b7 \u25bc intervención o calibración \u00b7 \u2504 prolongado desde ahora.',
    label: (v: string, u: string, at: string) => `Sesgo en el tiempo. En el último análisis ${v} \u00b1 ${u}; el límite de mantenimiento es ${at}.`,
    nowIs: (v: string, u: string, unit: string) => `Ahora ${v} \u00b1 ${u}${unit}.`,
    driftIs: (v: string, u: string, unit: string) => `Se mueve ${v} \u00b1 ${u}${unit} al mes.`,
    earliest: (limit: string, day: string) => `El límite de ${limit} puede alcanzarse desde el ${day}.`,
    perhaps: (limit: string) => `El límite de ${limit} está en el borde de lo que los análisis pueden decir (k = 2).`,
    likely: (day: string, latest: string | null) => (latest ? `Probablemente el ${day}, a más tardar el ${latest}.` : `Probablemente el ${day}.`),
    reached: (limit: string) => `Se ha alcanzado el límite de ${limit}.`,
    all: 'Todo', days: (n: number) => `${n} días`, range: 'Tiempo mostrado',
  },
  verdicts: {
    title: 'Lo que dijeron los análisis', since: 'Incluido después: una repetición lo confirmó.', nowDoubted: 'Apartado según lo que se sabe ahora.', older: 'Mostrar análisis anteriores', loading: 'Cargando\u2026',
    failed: 'No se pueden obtener los análisis anteriores.', none: 'Aún no hay análisis. El primero que se pueda comparar dice más que cualquier medida.',
  },
  agreement: {
    title: 'Sonda frente a análisis', few: 'Hacen falta tres análisis comparables para decir si concuerdan.',
    says: (n: number, bias: string, low: string, high: string, unit: string) => `En ${n} análisis, la diferencia media de sonda menos análisis es ${bias}${unit}; 19 de cada 20 diferencias están entre ${low} y ${high}${unit}.`,
    together: 'Los análisis de un mismo instrumento y lote pueden desviarse todos juntos. El sesgo de arriba lo tiene en cuenta; estas dos imágenes, no.',
    difference: 'Diferencia según la media', regression: 'Sonda según análisis', failed: 'No se puede obtener la imagen.', png: 'como PNG', svg: 'como SVG',
  },
  learned: {
    title: 'La recta propia de este vaso', silent: 'Callada hasta que haya aprendido bastante: aún no se juzga nada por ella.', speaks: 'Ha aprendido bastante para juzgar por ella.',
    checks: 'Análisis de los que aprendió', of: (n: number, needed: number) => `${n} de al menos ${needed}`, days: 'Repartidos en', ofDays: (d: string, needed: string) => `${d} de al menos ${needed}\u00a0d`,
    since: (day: string) => `Empezó de nuevo el ${day}, tras una intervención en la sonda; lo aprendido antes ya no cuenta.`,
    anew: 'Empezó de nuevo; lo aprendido antes ya no cuenta.',
    level: (hocl: string) => `Con ${hocl}\u00a0mg/L de ácido hipocloroso`, slope: 'Con diez veces más',
    own: 'Esta recta es solo de este vaso y de este electrodo. Nunca convierte milivoltios en mg/L.',
  },
  signal: {
    title: 'Lo que la señal dice por sí sola', good: 'Nada habla en contra de la señal.', unknown: 'Aún no se la ha seguido lo bastante para decirlo.', response: 'Respuesta (constante de tiempo)', minutes: 'min',
    healthy: 'no es lenta, o no se sabe', wanders: 'Vaivén habitual en 2\u00a0h', notYet: 'aún no se sabe', spikes: 'Picos recientes', leapt: 'Último salto', flow: 'Última vez sin caudal', never: 'nunca visto',
    lag: 'Llega después de su propia hora', same: 'Sin cambiar desde hace',
  },
  strips: { shaded: 'rayado: sin caudal', event: '\u25bc calibración o intervención', doubted: '\u25c7 análisis apartado' },
};
