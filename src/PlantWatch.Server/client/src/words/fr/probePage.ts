import type { Believe } from '../../contract.probe';
import type { probePage as shape } from '../en/probePage';

// The page of a probe: which to believe, and what to do now.

export const probePage: typeof shape = {
  whom: { neither: 'Ne se fier à aucune des deux seule', probe: 'Se fier à la sonde', tests: 'Se fier aux analyses', either: 'Elles concordent' } as Record<Believe, string>,
  believed: 'Retenu', shows: 'La sonde affiche', lastTest: 'Dernière analyse', expected: 'Attendu', noTest: 'aucune analyse', notBelieved: 'pas encore connu', orpAsRead: 'tel que lu',
  testDoubted: 'douteuse', doNow: 'À faire maintenant', doNext: 'À faire', then: 'puis', calibrate: 'Étalonner', toDecision: 'Voir la décision', writeFault: 'Noter une panne', enter: 'Saisir une analyse',
  kept: 'Le serveur ne répond pas\u202f: voici les dernières données reçues.',
  restsOn: (n: number) => (n > 1 ? `D’après ${n} analyses, la dernière prélevée` : `D’après ${n} analyse, prélevée`),
  drift: 'Dérive', aMonth: 'par mois', sensitivity: 'Sensibilité', testsOff: 'Écart commun des analyses', figures: 'Chiffres',
  bias: {
    title: 'Son écart au fil du temps', now: 'maintenant', maintenance: 'maintenance', out: 'hors spécification', reads: 'lit trop haut', readsLow: 'lit trop bas',
    legend: '● après une analyse, avec son intervalle (k = 2) \u00b7 ◇ analyse écartée \u00b7 ▼ travail ou étalonnage \u00b7 ┄ prolongé à partir de maintenant.',
    label: (v: string, u: string, at: string) => `Biais au fil du temps. À la dernière analyse ${v} ± ${u}\u202f; la limite de maintenance est ${at}.`,
    nowIs: (v: string, u: string, unit: string) => `Maintenant ${v} ± ${u}${unit}.`,
    driftIs: (v: string, u: string, unit: string) => `Il bouge de ${v} ± ${u}${unit} par mois.`,
    earliest: (limit: string, day: string) => `La limite de ${limit} peut être atteinte à partir du ${day}.`,
    perhaps: (limit: string) => `La limite de ${limit} est au bord de ce que les analyses peuvent dire (k = 2).`,
    likely: (day: string, latest: string | null) => (latest ? `Probablement le ${day}, au plus tard le ${latest}.` : `Probablement le ${day}.`),
    reached: (limit: string) => `La limite de ${limit} est atteinte.`,
    all: 'Tout', days: (n: number) => (n > 1 ? `${n}\u00a0jours` : `${n}\u00a0jour`), range: 'Période affichée',
  },
  verdicts: {
    title: 'Ce qu’ont dit les analyses', since: 'Prise en compte depuis\u202f: une répétition l’a confirmée.', nowDoubted: 'Écartée en l’état actuel.', older: 'Analyses plus anciennes', loading: 'Chargement…',
    failed: 'Impossible de récupérer les analyses plus anciennes.', none: 'Aucune analyse. La première à comparer en dit plus que n’importe quelle mesure.',
  },
  agreement: {
    title: 'Sonde face aux analyses', few: 'Il faut trois analyses comparables pour juger de l’accord.',
    says: (n: number, bias: string, low: string, high: string, unit: string) => `Sur ${n} analyses, l’écart moyen, sonde moins analyse, est de ${bias}${unit}\u202f; 19 écarts sur 20 sont entre ${low} et ${high}${unit}.`,
    together: 'Les analyses d’un même instrument et d’un même lot peuvent être toutes décalées ensemble. Le biais ci-dessus en tient compte, pas ces deux figures.',
    difference: 'Écart selon la moyenne', regression: 'Sonde selon analyse', failed: 'Impossible de récupérer la figure.', png: 'en PNG', svg: 'en SVG',
  },
  learned: {
    title: 'La droite propre à ce bassin', silent: 'Muette tant qu’elle n’a pas assez appris\u202f: elle ne juge encore rien.', speaks: 'Elle a assez appris pour juger.',
    checks: 'Analyses apprises', of: (n: number, needed: number) => `${n} sur au moins ${needed}`, days: 'Réparties sur', ofDays: (d: string, needed: string) => `${d} sur au moins ${needed}\u00a0j`,
    since: (day: string) => `Elle est repartie de zéro le ${day}, après un travail sur la sonde\u202f; ce qui avait été appris avant ne compte plus.`,
    anew: 'Elle est repartie de zéro\u202f; ce qui avait été appris avant ne compte plus.',
    level: (hocl: string) => `À ${hocl}\u00a0mg/L d’acide hypochloreux`, slope: 'Pour dix fois plus',
    own: 'Cette droite n’appartient qu’à ce bassin et à cette électrode. Elle ne change jamais des millivolts en mg/L.',
  },
  signal: {
    title: 'Ce que dit le signal seul', good: 'Rien contre le signal.', unknown: 'Pas entendu assez longtemps pour juger.', response: 'Réponse (constante de temps)', minutes: 'min',
    healthy: 'pas lente, ou inconnue', wanders: 'Varie d’ordinaire en 2\u00a0h de', notYet: 'pas encore connu', spikes: 'Pics récents', leapt: 'Dernier saut', flow: 'Dernière fois sans débit', never: 'jamais vu',
    lag: 'Arrive après son heure', same: 'Inchangé depuis',
  },
  strips: { shaded: 'hachuré\u202f: sans débit', event: '▼ étalonnage ou travail', doubted: '◇ analyse écartée' },
};
