import type { alarmList as listShape, alarmPage as pageShape, makeSafe as safeShape } from '../en/alarms';

/** Words of the record that the plant was made safe. */
export const makeSafe: typeof safeShape = {
  open: 'Consigner les mesures prises', legend: 'Mesures prises', save: 'Consigner la mise en sécurité', first: 'Le réarmement est possible dès que la mise en sécurité de l’installation est consignée.',
  bathersOut: 'Les baigneurs sont sortis de l’eau', pumpsIsolated: 'Les deux pompes doseuses sont isolées', circulationHeld: 'La circulation reste arrêtée tant que les conduites ne sont pas sûres',
  roomLeft: 'Tout le monde a quitté le local, et personne n’y est rentré avant que l’air soit reconnu sain', tankDealtWith: 'Une personne compétente a traité le contenu du bac',
  ofTank: { legend: 'Mesures prises à ce bac', pumpsIsolated: 'La pompe de ce bac est isolée' },
  all: 'Consigné seulement quand les trois sont faites.', done: (who: string) => `mise en sécurité consignée par ${who}`,
};

/** Words of the alarm list: what asks for something, what is set aside and by whom. */
export const alarmList: typeof listShape = {
  asks: 'À traiter', aside: 'De côté', nothingAsks: 'Rien à traiter pour le moment.',
  follow: (n: number) => (n > 1 ? `et ${n} qui en découlent` : `et ${n} qui en découle`),
  latched: 'Maintenue\u202f: elle reste jusqu’au réarmement', suppressedBy: (what: string) => `inhibée par conception\u202f: ${what}`,
  outOfService: (who: string) => `hors service, par ${who}`, outUntil: (at: string) => `jusqu’au ${at}`, oneShot: 'jusqu’à sa première disparition', again: (n: number) => `rappelée ${n} fois`,
  several: 'En acquitter plusieurs…', severalTitle: 'En acquitter plusieurs avec un seul commentaire', severalLead: 'Celles affichées à l’ouverture. Les critiques, et celles regroupées sous une autre, s’acquittent une à une.',
  severalComment: 'Commentaire pour toutes', needComment: 'Indiquer ce qui vaut pour toutes.', needOne: 'En choisir au moins une.', acknowledgeN: (n: number) => `En acquitter ${n}`,
  notTaken: (n: number) => (n > 1 ? `${n} n’ont pas été prises en compte\u202f:` : `${n} n’a pas été prise en compte\u202f:`), silence: 'Couper son bip', out: 'Remettre en service',
};

/** Words of the page of one alarm. */
export const alarmPage: typeof pageShape = {
  back: 'Toutes les alarmes', gone: 'Cette alarme n’existe pas.', over: 'Cette alarme est terminée. Voici ce que le registre en sait.', newer: 'Elle est de nouveau présente\u202f: aller à la plus récente',
  kept: 'Le serveur est injoignable. Voici les dernières données reçues.',
  rule: 'La règle en cause', usual: 'Cause habituelle', clears: 'Disparition', allRules: 'Toutes les règles', course: 'Déroulement', raisedHere: 'apparue',
  cause: 'Elle découle de', consequences: 'Ce qui en découle', history: 'Ce qui lui est arrivé', noHistory: 'Le registre n’en sait encore rien.',
  earlier: 'Auparavant, dans les 30\u00a0jours précédents', noEarlier: 'Aucun déclenchement dans les 30\u00a0jours précédents.', onBehalf: 'sans intervention', since: 'depuis', line: 'la limite franchie', none: 'rien à tracer pour elle',
  legend: '▼ ce qui est arrivé à l’alarme',
};
