import type { sound as shape } from '../en/sound';

/** Words of the sound in the browser. */
export const sound: typeof shape = {
  title: 'Sonido en este navegador', off: 'Sonido apagado', turnOn: 'encender', silence: 'Silenciar',
  state: {
    off: 'Sonido apagado, encender', waiting: 'Sonido apagado, encender: esta página calla hasta que se pulse una vez', on: 'Sonido encendido: apagar',
    elsewhere: 'El sonido está encendido en otra pestaña de este navegador: apagar',
  },
  now: {
    off: 'El sonido está apagado.', waiting: 'El sonido está encendido, pero el navegador mantiene muda esta página hasta que se pulse una vez.', on: 'El sonido está encendido.', elsewhere: 'El sonido está encendido; suena otra pestaña de este navegador.',
  },
  lead: 'El ajuste queda en este navegador. De varias pestañas suena una. Lo aplazado, lo inhibido, lo que está fuera de servicio o bajo su causa no suena. Todo lo que suena se ve también en la barra, y silenciar no reconoce nada. Un navegador puede quedar mudo cuando el dispositivo se duerme: el sonido no sustituye a mirar.',
  doTurnOn: 'Encender el sonido', doTurnOff: 'Apagar el sonido', test: 'Probar el sonido',
  calls: { critical: 'Crítica', high: 'Alta', medium: 'Media', low: 'Baja', lost: 'Servidor sin respuesta' },
  played: (what: string) => `Ha sonado: ${what}. ¿No se ha oído? Mirar el volumen de este dispositivo.`, notAllowed: 'El navegador no deja sonar a esta página.',
};
