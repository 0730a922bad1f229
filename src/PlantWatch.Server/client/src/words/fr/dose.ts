import type { dose as shape } from '../en/dose';
import { inText } from './inText';

// Single doses.

const withArticle = (name: string) => {
  const text = inText(name);
  if (/^[aeiouyéèh]/i.test(text)) return `l’${text}`;
  if (/^solides/.test(text)) return `les ${text}`;
  return /^(dureté|température|conductivité|turbidité)/.test(text) ? `la ${text}` : `le ${text}`;
};

export const dose: typeof shape = {
  lead: 'Calcule une dose d’un produit. Un conseil, jamais un ordre\u202f: les responsables de l’installation décident, et les règles locales et la fiche de données de sécurité du produit passent d’abord.',
  ask: 'Pour quoi faire', product: 'Produit', choose: 'Choisir…', noProducts: 'Le fichier de l’installation ne liste aucun produit.', noUse: 'PlantWatch ne calcule pas de dose de ce produit.',
  target: 'À corriger', raise: (name: string) => `Relever ${withArticle(name)}`, lower: (name: string) => `Abaisser ${withArticle(name)}`, value: 'Jusqu’à', valueOf: (what: string) => `${what} jusqu’à`, now: (v: string) => `Analysé\u202f: ${v}`, limits: (low: string, high: string) => `Limites ${low} à ${high}`,
  notTested: 'Non analysé', bathers: 'N’y a-t-il plus de baigneurs dans l’eau\u202f?', clear: 'Personne dans l’eau', notClear: 'Quelqu’un dans l’eau', byPump: 'Ce produit entre par son doseur.',
  closed: 'Le bassin est fermé et le reste jusqu’à l’analyse de contrôle', notNumber: 'Pas un nombre. Des chiffres avec une virgule ou un point.',
  waiting: 'Choisir un produit et une cible.', working: 'Calcul en cours…', unreachable: 'Le serveur est injoignable, et aucune dose n’est calculée sans lui. Nouvel essai automatique.',
  refusedTitle: 'Pas de dose', firstGo: 'Premier apport', allAtOnce: 'En une fois', of: (v: string) => `de ${v} au total, selon les analyses de contrôle`, why: 'Pourquoi pas tout', also: 'soit', u: (v: string) => `Effet connu à environ ± ${v}\u00a0%`,
  cost: (v: string) => `Coût d’environ ${v}`, strength: 'Titre du jour', strengthOf: (v: string, chlorine: boolean) => `${v}\u00a0% en masse${chlorine ? ', en chlore disponible' : ''}`,
  age: (days: number) => (days === 0 ? 'connu depuis aujourd’hui' : days === 1 ? 'connu depuis 1\u00a0jour' : `connu depuis ${days}\u00a0jours`), ageUnknown: 'ancienneté inconnue', water: 'Eau', firstWater: (v: string) => `atteint d’abord ${v}`,
  retest: 'Analyse de contrôle', retestAt: (hours: string, clock: string) => `après ${hours}\u00a0h, pas avant ${clock}`, after: 'Après le premier apport', nowColumn: 'Maintenant', atOnce: 'Aussitôt', spent: 'Une fois usé',
  rows: { ph: 'pH', saturation: 'Indice de saturation', freeChlorine: 'Chlore libre', hypochlorousAcid: 'Acide hypochloreux', alkalinity: 'TAC', calcium: 'Dureté calcique', cyanurate: 'Acide cyanurique', solids: 'Solides dissous' },
  closedModel: 'Mélangé et sans échange avec l’air. L’analyse de contrôle tranche.', side: 'Autres effets', how: 'Où et dans quel ordre', equipment: 'À porter et à garder sous la main', precautions: 'Précautions', says: 'À savoir',
  given: 'J’ai ajouté ceci', givenLead: 'Noter ce qui a été versé, même si ce n’est pas ce qui est écrit ici.', amount: 'Quantité', unitChoice: 'Unité', when: 'Quand', note: 'Remarque', by: 'Ajouté par', save: 'Au registre', needBy: 'Qui l’a ajouté\u202f?',
  needAmount: 'Quelle quantité\u202f? Un nombre supérieur à 0.', needWhen: 'Quand était-ce\u202f?', needProduct: 'Choisir d’abord le produit.', kept: 'Au registre. L’analyse de contrôle y sera comparée.', keptHere: 'Gardé sur cet appareil\u202f; envoi dès que le serveur est joignable.',
  waitingHere: 'Sur cet appareil, pas encore au registre', refusedHere: 'Refusé', drop: 'Jeter', dropSure: 'Jeter la saisie\u202f?',
  list: 'Doses ajoutées', none: 'Aucune dose saisie pour ce bassin.', noRetest: 'Pas encore d’analyse de contrôle', retestFrom: (clock: string) => `analyse de contrôle parlante à partir de ${clock}`, corrected: 'Corrigé par une saisie ultérieure', corrects: 'Corrige une saisie antérieure',
  correct: 'Corriger', correcting: (what: string) => `Correction de\u202f: ${what}`, reason: 'Motif de la correction', needReason: 'Pourquoi cette correction\u202f?', words: { unknown: '', as_predicted: 'comme prévu', less: 'moins que prévu', more: 'plus que prévu', other_way: 'en sens inverse', not_comparable: 'non comparable' },
  hold: {
    open: 'Un incident est ouvert dans cette eau.', wants: (start: string, highest: string) => `Son plan demande ${start}\u00a0mg/L de chlore libre dans tout le bassin avant le départ du décompte\u202f; ici, une dose est calculée jusqu’à ${highest}\u00a0mg/L.`,
    notClosed: (names: string) => `Pas fermé\u202f: ${names}. Fermer d’abord tous les bassins de cette eau.`, toIt: 'Voir l’incident',
  },
  unfit: 'pas pour ce bassin', remarks: (n: number) => (n > 1 ? `${n} remarques` : `${n} remarque`),
};
