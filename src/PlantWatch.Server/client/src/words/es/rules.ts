import type { rulesPage as shape } from '../en/rules';

/** Words of the page of rules. */
export const rulesPage: typeof shape = {
  title: 'Reglas', lead: 'Todas las reglas que pueden activar una alarma, con las palabras de la propia página de reglas del proyecto. Un consejo nunca es una orden; antes van la normativa local y los profesionales autorizados.',
  find: 'Buscar una regla', none: 'Ninguna regla tiene estas palabras.', out: 'Fuera de servicio ahora', nothingOut: 'Nada está fuera de servicio.',
  cause: 'Causa habitual', consequence: 'Si no se hace nada', action: 'Qué hacer', time: 'Tiempo para responder', onDelay: 'Debe durar', offDelay: 'Debe faltar durante', deadband: 'Banda muerta',
  suppressed: 'Inhibida', clears: 'Desaparece', again: 'Vuelve a avisar', againAfter: (hours: string) => `tras ${hours}\u00a0h mientras siga activa`, never: 'nunca', provenance: 'Procedencia',
  rang: (n: number) => (n === 0 ? 'no sonó en 30 días' : n === 1 ? 'sonó una vez en 30 días' : `sonó ${n} veces en 30 días`), last: 'última', standing: (n: number) => (n === 1 ? '1 activa ahora' : `${n} activas ahora`),
  safety: 'Trata de la seguridad de las personas: no puede aplazarse ni ponerse fuera de servicio.',
  eachItsOwn: 'No deja el servicio: cada trabajo tiene su propia alarma. Cabe aplazar esa, o cambiar el plan.',
  take: 'Poner fuera de servicio', taking: (rule: string) => `Poner fuera de servicio: ${rule}`, what: 'Para', choose: 'elegir \u2026', why: 'Motivo', until: 'Hasta', untilHint: 'Según el reloj de la instalación. Entonces vuelve sola al servicio.',
  caution: 'Hasta entonces no llama a nadie. Conviene que alguien mire en su lugar.', needWhat: 'Falta elegir de qué se trata.', needUntil: 'Falta hasta cuándo.', past: 'Esa hora ya ha pasado.', giveBack: 'Devolver al servicio', back: 'Observación',
  outBy: (who: string) => `por ${who}`, outUntil: (at: string) => `hasta ${at}`, open: 'hasta que una persona la devuelva', nothingHere: 'Esta instalación no tiene nada que ella vigile.',
};
