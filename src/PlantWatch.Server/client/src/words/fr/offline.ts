import type { Reach } from '../../offline/worker';
import type { offline as shape } from '../en/offline';

// Pages without a server: what a device can do, and what it shows then.

export const offline: typeof shape = {
  newer: 'Une version plus récente de ces pages est sur cet appareil.', take: 'La prendre',
  asHeard: (time: string) => `Dernières données de ${time}.`, asHeardMore: 'Rien ici n’est actuel. Nouvel essai automatique vers le serveur.',
  title: 'Sans réseau',
  reach: {
    starting: 'Les pages sont en cours de copie sur cet appareil\u202f; garder celle-ci ouverte un moment.',
    ready: 'Cet appareil ouvre les pages sans réseau, même après avoir été éteint.',
    insecure: 'Cette adresse est en http simple\u202f: le navigateur ne garde alors aucune page. Une fois fermées, elles ne s’ouvrent plus sans le serveur. Une adresse https avec un certificat reconnu par cet appareil y remédie.',
    unsupported: 'Ce navigateur ne garde aucune page\u202f: une fois fermées, elles ne s’ouvrent plus sans le serveur.',
    failed: 'Les pages n’ont pas pu être copiées sur cet appareil\u202f: une fois fermées, elles ne s’ouvrent plus sans le serveur.',
  } satisfies Record<Reach, string>,
  can: [
    'Une page ouverte continue de marcher sans réseau. La saisie reste sur cet appareil tant que le serveur n’en a pas répondu, et part toute seule.',
    'Deux onglets ouverts partagent ce qui attend\u202f; l’un d’eux l’envoie. Une chose envoyée deux fois est gardée une fois.',
    'Ce que le serveur refuse est mis de côté avec son motif, ne bloque rien d’autre, et peut être corrigé.',
  ],
  full: 'Cet appareil n’a plus de place pour garder la saisie. En libérer, ou rester là où il y a du réseau\u202f: sans lui, plus rien ne peut être gardé.',
};
