import type { telling as shape } from '../en/telling';

export const telling: typeof shape = {
  title: 'Benachrichtigung',
  none: 'Außerhalb dieser Seite erfährt niemand von Alarmen. Wie benachrichtigt wird, sagt der Abschnitt telling der Anlagendatei.',
  duty: 'Bereitschaft', nobody: 'Niemand', standsIn: 'Niemand hat Bereitschaft: die erste Person der Weitermeldung springt ein.',
  now: 'Jetzt', next: 'Danach', from: (at: string) => `ab ${at}`,
  escalation: 'Weitermeldung, solange niemand quittiert', quiet: 'Ruhezeit',
  quietSaid: (from: string, to: string) => `${from} bis ${to}: „Niedrig“ und „Mittel“ warten, „Hoch“ und „Kritisch“ nicht`,
  channels: 'Wege', kind: { mqtt: 'Topic', webhook: 'Webhook', email: 'E-Mail' },
  told: (priority: string) => `gemeldet ab „${priority}“`,
  delivers: 'Stellt zu', fails: 'Stellt nicht zu', tries: 'Versucht erneut', unused: 'Noch nicht benutzt',
  last: 'Zuletzt zugestellt', never: 'nie', waiting: 'Wartet', givenUp: 'Aufgegeben', since: (at: string) => `seit ${at}`,
  test: 'Testnachricht senden', sending: 'Sendet', sent: 'Die Gegenseite hat die Testnachricht angenommen.',
  sentTo: (names: string) => `Aufgegeben für ${names}. Ob sie ankommt, können nur die Empfänger sagen.`,
  notSent: (why: string) => `Nicht zugestellt: ${why}`,
  by: 'Name',
};
