import type { sound as shape } from '../en/sound';

/** Wörter für den Ton im Browser. */
export const sound: typeof shape = {
  title: 'Ton in diesem Browser', off: 'Ton aus', turnOn: 'einschalten', silence: 'Stumm',
  state: {
    off: 'Ton aus, einschalten', waiting: 'Ton aus, einschalten: diese Seite ist stumm, bis sie einmal berührt wird', on: 'Ton ist an: ausschalten',
    elsewhere: 'Ton ist in einem anderen Tab dieses Browsers an: ausschalten',
  },
  now: {
    off: 'Ton ist aus.', waiting: 'Ton ist an, aber der Browser hält diese Seite stumm, bis sie einmal berührt wird.', on: 'Ton ist an.', elsewhere: 'Ton ist an; ein anderer Tab dieses Browsers tönt.',
  },
  lead: 'Die Einstellung bleibt bei diesem Browser. Von mehreren Tabs tönt einer. Was zurückgestellt, unterdrückt, außer Betrieb oder unter seiner Ursache ist, bleibt still. Was tönt, steht auch in der Leiste, und Stummschalten quittiert nichts. Ein Browser kann verstummen, wenn das Gerät schläft: Ton ersetzt kein Hinsehen.',
  doTurnOn: 'Ton einschalten', doTurnOff: 'Ton ausschalten', test: 'Ton prüfen',
  calls: { critical: 'Kritisch', high: 'Hoch', medium: 'Mittel', low: 'Niedrig', lost: 'Server nicht gehört' },
  played: (what: string) => `Gespielt: ${what}. Nichts gehört? Lautstärke dieses Geräts ansehen.`, notAllowed: 'Der Browser lässt diese Seite nicht tönen.',
};
