import type { whatIf as shape } from '../en/whatIf';
import { of } from './elision';

// The page where a person tries changes of the water.

export const whatIf: typeof shape = {
  lead: 'Changer une donnée et voir l’effet. Rien n’est consigné ni dosé.',
  closed: 'Calculé sans échange avec l’air\u202f: dans un bassin, le CO₂ quitte l’eau, et le pH remonte dans les heures qui suivent. Une aide à la réflexion, pas une dose\u202f: analyser avant et après.',
  inputs: 'L’eau', now: 'Maintenant', then: 'Simulé', change: 'Écart', present: (v: string) => `maintenant ${v}`, backTo: (v: string) => `revenir à ${v}`, notTested: 'non analysé',
  startedNow: 'Part de l’eau telle qu’elle est.', startedAt: (clock: string) => `Parti de l’eau de ${clock}.`, reset: 'Revenir à maintenant',
  notNumber: 'Pas un nombre. Des chiffres avec une virgule ou un point.',
  doses: 'Ajouts', add: 'Ajouter un produit', choose: 'Choisir…', atHand: 'Disponibles', others: 'Du commerce, au titre habituel', remove: (name: string) => `Retirer ${name}`, removeShort: 'Retirer',
  amount: (name: string) => `${name}, kilogrammes`, volume: 'Eau qui le reçoit', noProducts: 'Le fichier de l’installation ne liste aucun produit.',
  volumeHint: (v: string) => `${v}\u202f: bassins et bac tampon du circuit, selon le fichier de l’installation.`,
  care: 'Ces quantités ne servent qu’à réfléchir. Ne jamais verser deux produits ensemble\u202f; ce qui peut être versé, où et avec quelles précautions, figure sur la', carePage: 'page Dose',
  spent: 'Une fois le chlore ajouté consommé', slider: (name: string) => `${name}, curseur`,
  results: 'L’effet', rows: {
    ph: 'pH', hypochlorousAcid: 'Acide hypochloreux', hypochlorousShare: 'Part du chlore libre', saturationIndex: 'Indice de saturation', freeChlorine: 'Chlore libre',
    totalAlkalinity: 'TAC', calciumHardness: 'Dureté calcique', dissolvedSolids: 'Solides dissous', cyanurate: 'Acide cyanurique',
  },
  short: { ph: 'pH', hypochlorousAcid: 'HOCl', hypochlorousShare: 'HOCl', saturationIndex: 'Indice' },
  claim: 'Indice du modèle par espèces\u202f: ± 0,06 est le mieux qu’il puisse annoncer, sans l’incertitude des analyses.',
  same: 'identique', unknown: '–',
  stillShort: 'De la dernière eau possible.', stale: 'Valeurs de la dernière eau possible. Corriger le champ marqué.', unreachable: 'Le serveur est injoignable\u202f: les valeurs sont figées. Nouvel essai automatique.',
  working: 'Calcul en cours…', spoken: (ph: string, hocl: string, index: string) => `pH ${ph}, acide hypochloreux ${hocl}, indice de saturation ${index}`,
  curves: 'Courbes', against: 'Selon', againstPh: 'pH', againstDose: (name: string) => `Dose ${of(name)}`, kilograms: 'kg', of: (what: string, against: string) => `${what} selon ${against}`,
  legend: (dose: boolean) => (dose ? '◆ simulé \u00b7 ombré\u202f: équilibre, ou limites du bassin.' : '◆ simulé \u00b7 ○ maintenant \u00b7 ┄ l’eau actuelle \u00b7 ombré\u202f: équilibre, ou limites de pH du bassin.'),
  table: 'Les courbes en chiffres', noCurve: 'Cette eau est trop mal connue pour tracer une courbe.', runs: (what: string, a: string, b: string, from: string, to: string) => `${what} va de ${a} à ${b} entre ${from} et ${to}.`,
};
