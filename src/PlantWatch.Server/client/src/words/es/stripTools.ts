// The tools over the strips of a pool: lines, another day, notes, marks, files.
import type { MarkKind } from '../../contract.notes';
import type { Compared } from '../../pool/ghost';
import type { Look } from '../../pool/look';
import type { stripTools as shape } from '../en/stripTools';

const times = (n: number, one: string, many: string) => (n === 1 ? `1 ${one}` : `${n} ${many}`);

export const stripTools: typeof shape = {
  lines: 'Líneas', looks: { both: 'Ambas', corrected: 'Corregida', raw: 'Bruta' } satisfies Record<Look, string>,
  compare: 'Comparar con', nothing: 'ningún otro día', compared: { yesterday: 'el día anterior', last_week: 'la semana anterior' } satisfies Record<Compared, string>, tooLong: 'hasta un mes',
  ghost: (what: string, from: string, to: string) => `\u22ef ${what}: ${from} \u2013 ${to}`, ghostReads: (what: string, v: string) => `${what} ${v}`,
  files: 'Guardar como', csv: 'Tabla (CSV)', png: 'Imagen (PNG)', svg: 'Dibujo (SVG)',
  summary: {
    none: 'No se midió nada en el tiempo mostrado.', flowed: 'Hubo caudal en todas las medidas.', stopped: (at: string) => `Sin caudal, ${at}.`, last: (v: string, at: string) => `Último ${v}, ${at}.`, least: (v: string, at: string) => `Mínimo ${v}, ${at}.`, most: (v: string, at: string) => `Máximo ${v}, ${at}.`,
    gaps: (n: number, longest: string) => (n === 0 ? 'Sin huecos.' : `${times(n, 'hueco', 'huecos')}, el más largo de ${longest}.`),
    tests: (n: number) => `${times(n, 'análisis', 'análisis')} en el tiempo mostrado.`,
  },
  marks: {
    label: 'Lo que pasó', kinds: {
      unknown: '', test: 'Análisis', dose: 'Dosis', calibration: 'Calibración', probe: 'Intervención en una sonda', alarm: 'Alarma', wash: 'Filtro lavado', stock: 'Productos', job: 'Trabajo', pool: 'Vaso', laboratory: 'Laboratorio', gap: 'Hueco', plan: 'Archivo de la instalación',
    } satisfies Record<MarkKind, string>,
    open: { dose: 'Dosis', calibration: 'Sonda', probe: 'Sonda', alarm: 'Alarma', wash: 'Bombas y filtros', stock: 'Productos', job: 'Trabajos', pool: 'Registro', laboratory: 'Laboratorio', plan: 'Registro', gap: 'Registro' } as Partial<Record<MarkKind, string>>,
    one: (kind: string, subject: string, at: string) => `${kind}, ${subject}, ${at}`, several: (n: number, kinds: string, from: string, to: string) => `${n} marcas, de ${from} a ${to}: ${kinds}`,
    until: (at: string) => `hasta ${at}`, by: (name: string) => `por ${name}`, itself: 'por sí solo', close: 'Cerrar', more: 'En este tiempo hay más de lo marcado: aquí están las más recientes. Acercar para ver el resto.', none: 'En este tiempo no hay nada marcado.', failed: 'No se puede obtener lo que pasó.',
  },
  note: {
    lane: 'Notas', add: 'Escribir una nota', title: 'Una nota sobre este tiempo', correcting: 'Corregir la nota', retracting: 'Retirar la nota', lead: 'Arrastrar sobre las curvas para elegir el tiempo, o teclearlo.', from: 'Desde', to: 'Hasta', text: 'Lo que se vio o se hizo', why: 'Por qué se cambia', whyGone: 'Por qué se retira', by: 'Quién la escribe',
    save: 'Guardar la nota', correct: 'Corregirla', retract: 'Retirarla', cancel: 'Dejarlo', hint: 'según el reloj de la instalación', textHint: 'Por ejemplo: fiesta escolar, cuarenta niños; o: filtro 2 abierto.',
    needText: 'Falta lo que se vio o se hizo.', needBy: 'Falta quién la escribe.', needWhy: 'Falta el motivo.', needTime: 'Falta fecha y hora.', endsFirst: 'Termina antes de empezar.', toCome: 'Está en el futuro: una nota habla de lo que ha sido.', tooLong: 'Un año como máximo.',
    retracted: 'retirada', corrected: 'corregida', waiting: 'por enviar', refused: 'Rechazada', edit: 'Abrir en el formulario', drop: 'Descartar', dropSure: '¿Descartar esta nota para siempre?', earlier: 'Lo que decía antes', saidAt: (who: string, at: string) => `${who}, ${at}`, span: (from: string, to: string) => (from === to ? from : `${from} \u2013 ${to}`), label: (text: string, span: string, state: string) => `Nota, ${span}: ${text}${state && ` (${state})`}`, moreRows: (n: number) => `y ${n} más: acercar`, failed: 'No se pueden obtener las notas.', gone: 'Una nota retirada queda en el registro.',
  },
  keys: 'N escribe una nota; arrastrar con Mayús, o tras una pulsación larga, elige su tiempo.',
};
