import type { telling as shape } from '../en/telling';

export const telling: typeof shape = {
  title: 'Qui est prévenu',
  none: 'Personne n’est prévenu des alarmes hors de cette page. La section telling du fichier de l’installation dit comment prévenir.',
  duty: 'D’astreinte', nobody: 'Personne', standsIn: 'Personne n’est d’astreinte\u202f: la première personne de l’escalade la remplace.',
  now: 'Maintenant', next: 'Ensuite', from: (at: string) => `à partir de ${at}`,
  escalation: 'Prévenu ensuite tant que personne n’acquitte', quiet: 'Heures calmes',
  quietSaid: (from: string, to: string) => `${from} à ${to}\u202f: basse et moyenne attendent, haute et critique non`,
  channels: 'Voies', kind: { mqtt: 'Sujet', webhook: 'Webhook', email: 'Courriels' },
  told: (priority: string) => `prévenu dès la priorité ${priority.toLowerCase()}`,
  delivers: 'Délivre', fails: 'Ne délivre pas', tries: 'Nouvel essai', unused: 'Pas encore utilisé',
  last: 'Dernière remise', never: 'jamais', waiting: 'À remettre', givenUp: 'Abandonné', since: (at: string) => `depuis ${at}`,
  test: 'Envoyer un message d’essai', sending: 'Envoi', sent: 'Le destinataire a pris le message d’essai.',
  sentTo: (names: string) => `Remis pour ${names}. S’il arrive, eux seuls peuvent le dire.`,
  notSent: (why: string) => `Non remis\u202f: ${why}`,
  by: 'Votre nom',
};
