// Die Verbindung zum Broker.
import type { connection as shape } from '../en/connection';

export const connection: typeof shape = {
  since: (at: string) => `seit ${at}`, past: (at: string) => `zuletzt ${at}`, more: (n: number) => `und ${n} weitere`,
  silent: (n: number) => (n === 1 ? '1 Topic hat noch nie gesprochen' : `${n} Topics haben noch nie gesprochen`),
  title: 'Verbindung zum Broker',
  encrypted: 'Verschlüsselt (TLS); Kette, Zeit und Name des Zertifikats werden geprüft.',
  plain: 'Nicht verschlüsselt: wer in diesem Netz ist, kann mitlesen und schreiben.',
  silentTodo: 'Jedes Topic Buchstabe für Buchstabe mit dem vergleichen, was das Gerät sendet, auch Groß- und Kleinschreibung, und nachsehen, ob das Gerät verbunden ist. Ein Broker mit Zugriffsliste nimmt ein Abonnement vielleicht an und gibt nichts weiter: prüfen, ob PlantWatch dort lesen darf.',
};
