import type { plan as shape } from '../en/plan';

// The dosing plan.

export const plan: typeof shape = {
  lead: 'Des dernières analyses jusque dans toutes les plages, par étapes sûres et à bas coût. Un conseil, jamais un ordre\u202f: les responsables de l’installation décident, et les règles locales et les fiches de données de sécurité passent d’abord.',
  bathers: 'N’y a-t-il plus de baigneurs dans l’eau\u202f?', clear: 'Personne dans l’eau', notClear: 'Quelqu’un dans l’eau', wish: 'Outre la sécurité', fewer: 'Peu d’apports', cheapest: 'Coût minimal des produits',
  working: 'Calcul en cours…', unreachable: 'Le serveur est injoignable, et aucun plan n’est calculé sans lui. Nouvel essai automatique.', wrong: 'Le serveur n’accepte pas ces valeurs\u202f:',
  bands: 'L’eau face à ses plages', figure: 'Grandeur', now: 'Maintenant', band: 'Plage', then: 'Après le plan', practice: 'usage courant', from: (source: string) => `selon ${source}`,
  standing: { unknown: '', not_tested: 'non analysé', inside: 'dans la plage', within_uncertainty: 'dans l’incertitude de l’analyse\u202f: la refaire d’abord', below: 'en dessous', above: 'au-dessus' },
  figures: { ph: 'pH', total_alkalinity: 'TAC', calcium_hardness: 'Dureté calcique', free_chlorine: 'Chlore libre', cyanuric_acid: 'Acide cyanurique', dissolved_solids: 'Solides dissous', saturation_index: 'Indice de saturation' },
  atLeast: (v: string) => `au moins ${v}`, atMost: (v: string) => `au plus ${v}`, between: (a: string, b: string) => `${a} à ${b}`, plusMinus: (v: string) => `± ${v}`,
  steps: 'Étapes', tickHint: 'Les coches restent sur cette page. Ce qui a été ajouté s’inscrit au registre sur la', dosePage: 'page Dose', done: (what: string) => `Fait\u202f: ${what}`,
  part: (k: number, n: number) => (n > 1 ? `apport ${k} sur ${n}` : ''), strength: (v: string, age: string) => `${v}\u00a0% en masse, ${age}`, ageDays: (d: number) => (d === 0 ? 'connu depuis aujourd’hui' : `connu depuis ${d}\u00a0j`), ageUnknown: 'ancienneté inconnue',
  aerate: 'Laisser partir le dioxyde de carbone', letChlorineFall: 'Laisser baisser le chlore libre', dilute: 'D’abord de l’eau neuve', dilution: (percent: string, drain: string, overflow: string) => `Remplacer ${percent}\u00a0% de l’eau\u202f: vidanger ${drain} et remplir, ou apporter ${overflow} en laissant déborder.`,
  wait: (h: string) => `Puis ${h}\u00a0h de circulation, et analyser`, waitTest: 'Suivre l’analyse', predicted: 'Prévu', care: 'À porter, et comment le manipuler', volume: (v: string) => `Eau du circuit\u202f: ${v}`,
  cost: (v: string) => `Les produits coûtent environ ${v} dans la monnaie de l’installation`, mass: (v: string) => `${v} de produits en tout\u202f; coût non compté, faute de prix`, says: 'À savoir', refused: 'Avant un plan', leftOut: 'Écarté', always: 'Toujours',
  fill: 'L’eau d’appoint', fillLead: 'Utile seulement là où les produits seuls ne suffisent pas.', askFill: 'Planifier avec cette eau', notNumber: 'Pas un nombre. Des chiffres avec une virgule ou un point.',
};
