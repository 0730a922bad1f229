// Pages without a server: what a device can do, and what it shows then.
import type { Reach } from '../../offline/worker';
import type { offline as shape } from '../en/offline';

export const offline: typeof shape = {
  newer: 'En este dispositivo hay una versión más reciente de estas páginas.', take: 'Usarla ahora',
  asHeard: (time: string) => `Según lo último recibido, a las ${time}.`, asHeardMore: 'Nada de esto es de ahora. Se vuelve a intentar solo.',
  title: 'Sin cobertura',
  reach: {
    starting: 'Las páginas se están guardando en este dispositivo; dejar esta abierta un momento.',
    ready: 'Este dispositivo abre las páginas sin cobertura, también después de haberlo apagado.',
    insecure: 'Esta dirección es http sin cifrar: así el navegador no guarda páginas. Una vez cerradas, no se pueden abrir sin el servidor. Lo remedia una dirección https con un certificado en el que este dispositivo confíe.',
    unsupported: 'Este navegador no guarda páginas: una vez cerradas, no se pueden abrir sin el servidor.',
    failed: 'Las páginas no se pudieron guardar en este dispositivo: una vez cerradas, no se pueden abrir sin el servidor.',
  } satisfies Record<Reach, string>,
  can: [
    'Una página abierta sigue funcionando sin cobertura. Lo que se anota queda en este dispositivo hasta que el servidor responde por ello, y sale solo.',
    'Dos pestañas abiertas comparten lo que espera; una de ellas lo envía. Lo que se envía dos veces se guarda una.',
    'Lo que el servidor rechaza se aparta con su motivo, no detiene nada más y puede corregirse.',
  ],
  full: 'En este dispositivo no queda sitio para guardar lo que se anota. Liberar espacio, o quedarse donde haya cobertura: sin ella no se puede guardar nada más.',
};
