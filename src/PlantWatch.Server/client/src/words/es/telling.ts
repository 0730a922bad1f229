import type { telling as shape } from '../en/telling';

export const telling: typeof shape = {
  title: 'Avisos a personas',
  none: 'Fuera de esta página no se avisa a nadie de las alarmas. La sección telling del archivo de la instalación dice cómo se avisa.',
  duty: 'De guardia', nobody: 'Nadie', standsIn: 'Nadie está de guardia: lo sustituye el primero de la escalada.',
  now: 'Ahora', next: 'Después', from: (at: string) => `desde ${at}`,
  escalation: 'A quién se avisa después si nadie reconoce', quiet: 'Horas de silencio',
  quietSaid: (from: string, to: string) => `de ${from} a ${to}: baja y media esperan; alta y crítica, no`,
  channels: 'Vías', kind: { mqtt: 'Tema', webhook: 'Webhook', email: 'Correo' },
  told: (priority: string) => `se avisa desde ${priority.toLowerCase()}`,
  delivers: 'Entrega', fails: 'No entrega', tries: 'Se reintenta', unused: 'Aún sin usar',
  last: 'Última entrega', never: 'nunca', waiting: 'En espera', givenUp: 'Abandonado', since: (at: string) => `desde ${at}`,
  test: 'Enviar un mensaje de prueba', sending: 'Enviando', sent: 'El otro lado ha aceptado el mensaje de prueba.',
  sentTo: (names: string) => `Entregado para ${names}. Si llega, solo ellos pueden decirlo.`,
  notSent: (why: string) => `No entregado: ${why}`,
  by: 'Nombre de quien lo envía',
};
