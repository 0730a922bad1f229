import type { StockAct, StockUnit } from '../../contract.stock';
import type { chemicals as shape } from '../en/chemicals';
import { of } from './elision';

// Chemicals: what there is, how long it lasts, what came and what it cost.

const days = (a: string) => `${a}\u00a0${a === '0' || a === '1' ? 'jour' : 'jours'}`;

export const chemicals: typeof shape = {
  title: 'Produits', none: 'Le fichier de l’installation ne nomme aucun produit (docs/plant-file.md, products).',
  units: { unknown: '', litre: 'L', kilogram: 'kg' } as Record<StockUnit, string>,
  acts: { unknown: '', delivered: 'Livré', refilled: 'Rempli', counted: 'Compté' } as Record<StockAct, string>,
  lasts: (a: string, b: string) => (a !== b ? `reste pour ${a} à ${days(b)}` : a === '0' ? 'reste pour moins d’un jour' : `reste pour ${days(a)}`), lastsLonger: (a: string) => (a === '0' ? 'reste peut-être pour moins d’un jour' : `reste pour ${days(a)} au moins`), overYear: 'reste pour plus d’un an', overYearShort: 'un an',
  lastsHint: (n: number, weekday: boolean) => `Juste quatre fois sur cinq\u202f; d’après ${n}\u00a0${n > 1 ? 'jours' : 'jour'} de consommation${weekday ? ', jours de semaine distingués' : ''}.`, usual: (a: string) => (a === '0' ? 'moins d’un jour à la consommation habituelle' : `${days(a)} à la consommation habituelle`),
  empty: 'épuisé', perDay: (a: string) => `${a} par jour`, use: 'Consommation', store: 'Réserve', storeNever: 'jamais comptée', storeBelow: 'Le livre passe sous zéro\u202f: il est sorti plus que ce qui a été noté. Compter la réserve.',
  tankOf: (name: string) => `Bac ${of(name)}`, noLevel: 'pas de niveau, aucun remplissage au livre', strength: (p: string) => `${p}\u00a0% aujourd’hui`, batch: (b: string) => `lot ${b}`, plan: (p: string) => `${p}\u00a0% selon le fichier de l’installation`,
  order: 'à commander', orderHint: (a: string) => `Une commande prend ${days(a)}.`, wrong: 'mauvais produit', nobody: 'Rempli, et personne n’a noté avec quoi\u202f:',
  cost: (days: number) => `Coût ${days > 1 ? `des ${days} derniers jours` : 'du dernier jour'}`, noPrice: 'prix inconnu', unpriced: (a: string) => `${a} sans prix, non compté.`,
  perBather: 'Par baigneur', perCubicMetre: 'Par m³ d’eau et par jour', noBathers: 'baigneurs non comptés', price: (a: string) => `${a} l’unité`,
  bare: 'Jamais comptés', bareHint: 'Pour ceux-ci, rien n’a encore été noté. Commencer par compter ce qu’il y a.',
  plot: (name: string) => `${name}\u202f: consommation par jour`, plotTable: 'En tableau', day: 'Jour', amount: 'Quantité', costColumn: 'Coût', part: 'connu en partie', noUse: 'Consommation encore inconnue\u202f: elle commence avec un niveau de bac, un débit de pompe ou une dose notée.',
  tooClose: 'Stockés trop près', months: 'Consommation et coût par mois', month: 'Mois', product: 'Produit', noMonths: 'Rien n’a encore été consommé.', soFar: 'à ce jour', total: 'Total',
  write: 'Noter', open: { delivered: 'Livraison', refilled: 'Remplissage', counted: 'Comptage', bathers: 'Baigneurs' },
  heads: { unknown: '', delivered: 'Une livraison', refilled: 'De la réserve vers un bac', counted: 'Un comptage' } as Record<StockAct, string>,
  aloud: 'À deux. Lire à voix haute l’étiquette et le nom du bac, et comparer, avant tout raccordement. De l’acide dans l’hypochlorite dégage du chlore gazeux.',
  countHint: 'Ce qu’il y a réellement. Le livre est ajusté de la différence\u202f; rien d’antérieur ne change.',
  productLabel: 'Produit, d’après l’étiquette', where: 'Destination', whereCounted: 'Lieu du comptage', inStore: 'En réserve', ofStore: 'La réserve', tankFor: (name: string, product: string) => `Bac ${of(name)} (pour ${product})`,
  amountLabel: (unit: string) => `Quantité, ${unit}`, containers: 'Bidons', strengthLabel: 'Titre de l’étiquette, %', batchLabel: 'Lot', madeOn: 'Fabriqué le', priceLabel: 'Prix du tout', more: 'Étiquette et prix', when: 'Quand',
  received: 'Reçu par', filled: 'Rempli par', counted: 'Compté par', checked: 'Étiquette et bac lus par', checkedHint: 'Une autre personne.', note: 'Remarque', save: 'Noter', cancel: 'Annuler',
  stop: (product: string, tank: string, holds: string) => `STOP. ${product} ne va pas dans le bac ${of(tank)}\u202f: celui-ci est pour ${holds}. Ne rien raccorder. Si rien n’a été versé, choisir le bon bac.`,
  wentIn: 'C’est versé. Le consigner et déclencher l’alarme', wentInNeed: 'Choisir le bon bac, ou indiquer que c’est versé.', wentInFirst: 'D’abord quitter le local. Prévenir tout le monde, appeler les secours selon les règles locales, ventiler seulement de l’extérieur, ne pas démarrer la pompe. Ceci peut se noter de l’extérieur.',
  needProduct: 'Choisir le produit d’après l’étiquette.', needWhere: 'Choisir la destination.', needAmount: 'Un nombre\u202f: la quantité.', needNumber: 'Un nombre.', needWhole: 'Un nombre entier.', needDay: 'Un jour.', needTime: 'Donner une date et une heure.', needChecked: 'Indiquer qui a lu avec vous l’étiquette et le bac.', needOther: 'Une autre personne que celle qui a reçu.',
  kept: { unknown: '', delivered: 'La livraison est notée.', refilled: 'Le remplissage est noté.', counted: 'Le comptage est noté.' } as Record<StockAct, string>,
  moves: 'Livraisons, remplissages et comptages', noMoves: 'Rien n’est encore noté. Commencer par compter ce qu’il y a.', into: (place: string) => `vers le bac ${of(place)}`, intoStore: 'vers la réserve', inTank: (place: string) => `dans le bac ${of(place)}`, inStoreCount: 'dans la réserve',
  book: (a: string) => `le livre indiquait ${a}`, two: (a: string, b: string) => (b ? `${a}, lu avec ${b}` : a), corrected: 'corrigé par une ligne ultérieure', correction: (why: string) => `remplace une ligne antérieure\u202f: ${why}`, containersSaid: (n: number) => (n > 1 ? `${n} bidons` : `${n} bidon`),
  bathersHead: 'Baigneurs du jour', bathersHint: 'D’après la caisse ou le comptage à l’entrée. Une ligne ultérieure pour le même jour remplace celle-ci.', pool: 'Bassin', number: 'Combien', saidBy: 'Indiqué par', bathersKept: (n: number, pool: string) => `${n > 1 ? `${n} baigneurs notés` : `${n} baigneur noté`} pour ${pool}.`, bathersList: 'Baigneurs', bathersNone: 'Aucun jour compté.',
  handover: 'Produits bientôt épuisés', handoverNone: 'Rien ne s’épuise d’ici une semaine.', handoverLeft: (a: string) => (a === '0' ? 'peut être épuisé d’ici un jour' : `peut être épuisé dans ${days(a)}`),
};
