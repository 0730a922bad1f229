import type { sound as shape } from '../en/sound';

/** Words of the sound in the browser. */
export const sound: typeof shape = {
  title: 'Son dans ce navigateur', off: 'Son coupé', turnOn: 'activer', silence: 'Couper le bip',
  state: {
    off: 'Son coupé, activer', waiting: 'Son coupé, activer\u202f: cette page reste muette jusqu’à un premier appui', on: 'Le son est activé\u202f: couper',
    elsewhere: 'Le son est activé dans un autre onglet de ce navigateur\u202f: couper',
  },
  now: {
    off: 'Le son est coupé.', waiting: 'Le son est activé, mais le navigateur garde cette page muette jusqu’à un premier appui.', on: 'Le son est activé.', elsewhere: 'Le son est activé\u202f; un autre onglet de ce navigateur sonne.',
  },
  lead: 'Le réglage reste dans ce navigateur. Parmi plusieurs onglets, un seul sonne. Une alarme mise en attente, inhibée, hors service ou sous sa cause reste muette. Tout ce qui sonne s’affiche aussi dans le bandeau, et couper le bip n’acquitte rien. Un navigateur peut se taire quand l’appareil se met en veille\u202f: le son ne remplace pas le regard.',
  doTurnOn: 'Activer le son', doTurnOff: 'Couper le son', test: 'Essayer le son',
  calls: { critical: 'Critique', high: 'Haute', medium: 'Moyenne', low: 'Basse', lost: 'Serveur muet' },
  played: (what: string) => `Joué\u202f: ${what}. Rien entendu\u202f? Vérifier le volume de cet appareil.`, notAllowed: 'Le navigateur ne laisse pas cette page sonner.',
};
