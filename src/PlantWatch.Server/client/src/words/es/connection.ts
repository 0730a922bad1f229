// La conexión con el broker.
import type { connection as shape } from '../en/connection';

export const connection: typeof shape = {
  since: (at: string) => `desde ${at}`, past: (at: string) => `la última vez ${at}`, more: (n: number) => `y ${n} más`,
  silent: (n: number) => (n === 1 ? '1 tema no ha hablado nunca' : `${n} temas no han hablado nunca`),
  title: 'Conexión con el broker',
  encrypted: 'Cifrada (TLS); se comprueban cadena, vigencia y nombre del certificado.',
  plain: 'Sin cifrar: quien esté en esta red puede leer, y escribir.',
  silentTodo: 'Compare cada tema letra por letra con lo que publica el equipo, también las mayúsculas, y mire si el equipo está conectado. Un broker con lista de acceso puede aceptar una suscripción y no entregar nada: vea si PlantWatch puede leer ahí.',
};
