import type { alarmHealth as healthShape, laboratory as laboratoryShape } from '../en/laboratory';

// Laboratory results, and the health of the alarms.

export const laboratory: typeof laboratoryShape = {
  title: 'Laboratoire',
  lead: 'Ce que seul un laboratoire peut voir. Une bonne chimie ne répond pas à un résultat\u202f: il faut un échantillon plus récent dans sa limite, ou une personne habilitée, avec un motif. Les règles locales et l’autorité sanitaire passent d’abord.',
  none: 'Aucun résultat saisi.', inForce: 'Limites en vigueur', noLimits: 'Aucune limite en vigueur\u202f: rien n’est dit normal.', planned: (days: string) => `prélèvement tous les ${days}\u00a0jours`, notPlanned: 'aucun prélèvement planifié',
  due: (at: string) => `prochain prélèvement ${at}`, resample: (at: string) => `nouveau prélèvement à faire ${at}`,
  verdict: { no_limit: 'aucune limite en vigueur', inside: 'dans la limite', not_proven: 'non prouvé', outside: 'hors limite' },
  open: 'Reste ouvert\u202f: hors de sa limite', closed: (by: string, at: string) => `clos par ${by}, ${at}`, corrected: 'corrigé par une saisie ultérieure',
  sampled: 'Prélevé', reported: 'Rendu', by: 'saisi par', number: 'Échantillon', water: 'Chimie au prélèvement', noWater: 'Aucune analyse de la veille et aucune sonde fiable à ce moment.', probe: 'sonde', test: 'analyse',
  limit: (v: string, ml: string) => `limite ${v} dans ${ml}\u00a0mL`, per: (v: string, ml: string) => `${v} dans ${ml}\u00a0mL`, nd: 'non détecté',
  enter: 'Saisir un bulletin', pool: 'Bassin', point: 'Prélevé à', points: { pool: 'Bassin', balance_tank: 'Bac tampon', outlet: 'Point bas ou reprise', cell: 'Chambre de mesure', unknown: 'Non précisé' } as Record<string, string>,
  place: 'Lieu en clair', lab: 'Laboratoire', sampleNumber: 'Numéro d’échantillon', counts: 'Dénombrements tels qu’imprimés', organism: 'Germe', colonyCount: 'Flore totale, 36\u00a0\u00b0C', legionella: 'Légionelles', count: 'Nombre', volume: 'dans', senses: { counted: '=', below: '<', above: '>', not_detected: 'aucun' },
  note: 'Remarque', save: 'Enregistrer', needNumber: 'Donner le nombre tel qu’imprimé', needOne: 'Saisir au moins un dénombrement', needPool: 'Choisir le bassin', needTime: 'Dire quand', need: 'Nécessaire',
  close: 'Clore ce résultat', closeLead: 'Seulement pour un résultat sans suite, ou que l’autorité sanitaire a réglé. Un responsable de permanence, ingénieur ou administrateur du fichier de l’installation signe avec nom et motif.', why: 'Pourquoi il peut être clos', closeNow: 'Clore',
  sampling: 'Faire le prélèvement', facts: [
    'Flacon stérile au thiosulfate de sodium, pour arrêter l’action du chlore dans le flacon (usage courant\u202f; ISO 19458, de mémoire). Ne jamais le rincer.',
    'Analyser chlore libre et pH au même endroit et au même moment, et les saisir\u202f: ils figurent à côté du dénombrement.',
    'Au frais et à l’obscurité, 2 à 8\u00a0°C, et au laboratoire dans la journée (usage courant\u202f; ISO 19458, de mémoire). Demander au laboratoire ses propres délais.',
    'Noter lieu et heure sur le flacon. Un nouveau prélèvement se fait au même point.',
  ],
};

export const alarmHealth: typeof healthShape = {
  month: 'Mois', people: 'Personnes de service à la fois', print: 'Imprimer',
  lead: (told: string, hour: string) => `Appels\u202f: ${told}\u202f; ${hour} par heure et par personne.`, observed: (from: string, to: string) => `Période observée\u202f: ${from} à ${to}\u202f; les moyennes portent sur elle.`,
  note: 'Compte ce qui appelle quelqu’un\u202f: apparition, rappel, ou fin de mise en attente d’une alarme encore présente. Une alarme mise en attente, inhibée, hors service ou sous sa cause n’appelle personne.',
  figure: 'Chiffre', here: 'Ici', target: 'Repère', known: 'Connu par', provenance: { '': '', published: 'publication', secondary: 'seconde main', from_memory: 'mémoire' } as Record<string, string>,
  meets: 'respecté', not: 'non respecté', source: 'Repères\u202f: ISA-18.2, IEC 62682 et EEMUA 191\u202f; les documents eux-mêmes n’ont pas été vus.',
  days: 'Appels par jour', daysSaid: (most: string) => `Barres par jour, ${most} au plus`, busiest: 'Les dix plus actives', none: 'Aucune.', share: 'Part', times: 'Appels', chattering: 'Battements', stale: 'Plus d’un jour', floods: 'Avalanches', until: 'à',
};
