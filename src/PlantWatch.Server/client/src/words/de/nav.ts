import type { nav as shape } from '../en/nav';

/** Namen der Seiten in der Navigation und der Gruppen, in denen sie stehen. */
export const nav: typeof shape = {
  habits: {
    title: 'Auf diesem Gerät', language: 'Sprache', asBrowser: (name: string) => `Wie der Browser (${name})`, units: 'Einheiten', asSite: 'Wie die Anlage', metric: 'Metrisch', us: 'US', imperial: 'Imperial',
    hint: 'Zahlen werden in SI geführt; Gallonen und Pfund stehen nur daneben. Beim Eintippen gelten Komma und Punkt.',
  },
  more: 'Mehr', moreTitle: 'Weitere Seiten',
  groups: { water: 'Wasser', alarms: 'Alarme und Grenzwerte', plant: 'Anlage', record: 'Betriebsbuch' },
  pages: {
    plantRound: 'Technikrundgang', instruments: 'Messgeräte', round: 'Runde', laboratory: 'Labor', reagents: 'Reagenzien', chemicals: 'Chemikalien', limits: 'Grenzwerte', rules: 'Regeln', exceptions: 'Abweichungen', alarmHealth: 'Alarmgüte', whatIfLimits: 'Was wäre, Grenzwerte', telling: 'Benachrichtigung', jobs: 'Aufträge', handover: 'Übergabe', paper: 'Blätter', boards: 'Tafeln',
    plantFile: 'Einstellungen der Anlage',
  },
};
