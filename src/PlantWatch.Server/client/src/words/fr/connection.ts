// La connexion au courtier.
import type { connection as shape } from '../en/connection';

export const connection: typeof shape = {
  since: (at: string) => `depuis ${at}`, past: (at: string) => `la dernière fois ${at}`, more: (n: number) => `et ${n} de plus`,
  silent: (n: number) => (n === 1 ? '1 sujet n’a jamais parlé' : `${n} sujets n’ont jamais parlé`),
  title: 'Connexion au courtier MQTT',
  encrypted: 'Chiffrée (TLS) ; chaîne, durée et nom du certificat sont vérifiés.',
  plain: 'Non chiffrée : qui est sur ce réseau peut lire, et écrire.',
  silentTodo: 'Comparez chaque sujet lettre par lettre avec ce que l’appareil publie, majuscules comprises, et vérifiez que l’appareil est connecté. Un courtier doté d’une liste d’accès peut accepter un abonnement et ne rien remettre : voyez si PlantWatch a le droit d’y lire.',
};
