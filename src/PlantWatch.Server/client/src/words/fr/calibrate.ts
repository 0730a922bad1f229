import type { calibrate as shape } from '../en/calibrate';

// Calibration at the bench: a tired person is led step by step.

export const calibrate: typeof shape = {
  title: (probe: string) => `Étalonner ${probe}`, open: 'Étalonner ou nettoyer', due: (day: string) => `Étalonnage à faire le ${day}`, overdue: (day: string) => `Étalonnage en retard depuis le ${day}`, every: (days: string) => `tous les ${days}\u00a0jours selon le fichier de l’installation`,
  stepOf: (n: number, all: number) => `Étape ${n} sur ${all}`, next: 'Suivant', back: 'Retour', again: 'Recommencer', againAsk: 'Jeter cette fiche et recommencer\u202f?', kept: 'La saisie reste sur cet appareil jusqu’à la signature.',
  limits: 'Limites du fichier de l’installation', slopeLimits: (low: string, high: string) => `pente ${low}\u2009–\u2009${high}\u00a0%`, offsetLimits: (mv: string) => `décalage ±${mv}\u00a0mV`, orpLimits: (mv: string) => `±${mv}\u00a0mV par rapport à la solution`,
  start: {
    ph: 'Prévoir deux tampons frais, distants d’au moins 2 pH, un thermomètre, de l’eau de rinçage et un chiffon doux. Compter une dizaine de minutes.', orp: 'Prévoir une solution de contrôle fraîche dont la valeur est connue à la température du moment, un thermomètre et de l’eau de rinçage. Compter environ cinq minutes.',
    other: 'Noter ici l’intervention faite sur la sonde. Ses mesures ne comptent pas pendant ce temps.', panel: 'Cette valeur vient de l’afficheur de l’installation\u202f: la relever dans les solutions, étalonner sur l’afficheur par son propre menu, puis la relever de nouveau. Rien n’est corrigé ici.',
    caution: 'Fermer les vannes de la chambre de mesure avant de l’ouvrir, et mettre la régulation en pause selon les usages de l’installation\u202f: elle ne doit pas doser d’après une sonde sortie de sa chambre. PlantWatch ne commande rien.',
    go: 'La sortir et commencer', goOn: 'Reprendre où j’en étais', marks: 'À partir de maintenant, ses mesures sont en contrôle de fonctionnement, une demi-heure au plus.', busy: (who: string) => `${who} travaille sur cette sonde.`,
  },
  working: (until: string) => `Mesures en contrôle de fonctionnement jusqu’à ${until}.`, notWorking: 'La demi-heure est passée\u202f: les mesures comptent de nouveau comme eau du bassin.', markAgain: 'Encore une demi-heure', cannotMark: 'Le serveur est injoignable\u202f: impossible de passer les mesures en contrôle de fonctionnement. Continuer, et taper les valeurs lues.',
  found: { title: 'État trouvé', lead: 'Avant de nettoyer ou de changer quoi que ce soit\u202f: quel était l’écart\u202f? La rincer et la plonger telle quelle.', skip: 'Mesure impossible en l’état', skipped: 'L’état trouvé n’a pas été relevé.' },
  points: { title: 'Étalonner', lead: 'Bien rincer, sécher en tamponnant, sans frotter. Ne jamais emporter d’un tampon dans le suivant.' },
  place: (n: number, all: number) => (all > 1 ? `Solution ${n} sur ${all}` : 'Solution'),
  which: 'Quel flacon\u202f?', family: { technical: 'Tampons techniques', reference: 'Tampons de référence', unknown: '' }, other: 'Un autre flacon\u202f: son étiquette', labelValue: (unit: string) => `Valeur de l’étiquette à cette température${unit ? `, ${unit}` : ''}`,
  trap: 'Lire le flacon\u202f: 7,00 et 6,86 sont deux tampons différents.', quinhydrone: { phthalate: 'Quinhydrone dans le tampon pH 4', phosphate: 'Quinhydrone dans le tampon pH 7', unknown: '' },
  orpReference: 'Ces valeurs sont données par rapport à Ag/AgCl dans le chlorure de potassium à 3,33\u00a0mol/L. Pour une autre électrode de référence, prendre l’étiquette du flacon.',
  celsius: 'Température de la solution, °C', is: (value: string) => `Elle vaut ${value} à cette température`, outOfTable: 'Pas de valeur dans la table à cette température',
  bottle: 'Lot et péremption du flacon', lot: 'Lot', expires: 'Péremption', expired: 'Ce flacon est périmé\u202f: en ouvrir un neuf.',
  putIn: 'La sonde est dans la solution', wait: 'Attendre la stabilisation', settling: (span: string, most: string) => `variation de ${span} sur cette durée\u202f; stable jusqu’à ${most}`, collecting: (done: string, all: string) => `${done} sur ${all}\u00a0s de mesures pour l’instant\u202f;`,
  settled: 'Stable', take: (value: string) => `Prendre ${value}`, taken: (value: string) => `Pris\u202f: ${value}`, takenTyped: 'tapé', retake: 'Reprendre', noReadings: 'Aucune mesure n’arrive de cette sonde. Taper la valeur lue.', noServer: 'Le serveur est injoignable. Taper la valeur lue.',
  orType: 'ou taper la valeur lue', typed: 'Valeur lue', inMv: 'mV', inPh: 'pH', mvHint: 'Les mV jugent l’électrode\u202f; ils ne changent aucune correction.', leave: 'Se passer du second tampon', leaveHint: 'Un seul tampon donne un décalage, pas de pente.',
  need: { celsius: 'Indiquer la température de la solution', label: 'Indiquer la valeur de l’étiquette', reading: 'Attendre la stabilisation, ou taper la valeur lue', wrong: 'Un nombre est attendu' },
  work: {
    title: 'Travail fait', lead: 'Nettoyer maintenant si nécessaire. Puis indiquer ce qui a été fait.', nothing: 'Rien n’a été touché\u202f: continuer avec l’état trouvé', onPanel: 'L’étalonner maintenant sur l’afficheur, par son propre menu, puis continuer.', need: 'Indiquer ce qui a été fait, ou que rien n’a été touché',
    kinds: { cleaned: 'Nettoyée', electrode_replaced: 'Électrode neuve', polished: 'Polie', membrane_replaced: 'Membrane neuve', electrolyte_refilled: 'Électrolyte renouvelé' },
    starts: { cleaned: '', electrode_replaced: 'Ce qui a été appris de l’ancienne électrode ne compte plus.', polished: 'La droite apprise pour ce bassin repart de zéro.', membrane_replaced: 'L’apprentissage de cette sonde repart de zéro.', electrolyte_refilled: 'L’apprentissage de cette sonde repart de zéro.' },
  },
  result: {
    title: 'Résultat', computing: 'Calcul en cours…', slope: 'Pente', offset: 'Décalage', foundBy: 'Écart à l’état trouvé', leftBy: 'D’après les dernières valeurs, après signature', verdict: { within: 'Dans les limites', outside: 'Hors limites', unknown: 'Rien de mesuré' },
    what: { offset: 'La signature décale sa valeur, à partir de maintenant.', two_point: 'La signature corrige pente et décalage, à partir de maintenant.', verification: 'La signature ne change aucune correction.', panel_adjustment: 'La signature consigne le réglage fait sur l’afficheur.' },
    waits: 'La signature ne change encore rien\u202f: une seconde personne doit approuver.', review: 'Une autre personne relit ensuite.', noServer: 'Le serveur est injoignable. La fiche reste sur cet appareil\u202f: revenir la signer.', putBack: 'La remettre dans sa chambre, ouvrir les vannes, et reprendre la régulation une fois la valeur stabilisée.',
    sign: 'Signer', note: 'Remarque', signLead: 'Remettre d’abord la sonde en place.',
  },
  done: { title: 'Signé', held: 'C’est valable dès maintenant.', waiting: 'Une seconde personne doit approuver.', sheet: 'Voir la fiche', probe: 'Retour à la sonde', check: 'Faire maintenant une analyse manuelle\u202f: sonde et analyse devraient concorder.' },
  sheet: {
    title: 'Fiche d’étalonnage', by: 'Fait par', from: 'Sortie de la chambre', to: 'Remise en chambre', work: 'Travail', none: 'aucun', basis: 'Par rapport à', asFound: 'État trouvé', measured: 'Étalonnée par', asLeft: 'État laissé', solution: 'Solution', temperature: '°C', known: 'Vrai', read: 'Lu', error: 'Erreur', lot: 'Lot, péremption',
    verdict: 'Verdict', correction: 'Correction', held: 'avant', holds: 'maintenant', reviewer: 'Relu par', notReviewed: 'pas encore relu', objected: 'Contesté par', print: 'Imprimer', remark: 'Remarque', settled: 'stable', typed: 'tapé', id: 'Fiche', notMeasured: 'non mesuré', afterCorrection: 'recalculé d’après les mêmes valeurs avec la nouvelle correction',
    buffer: { technical: (ph: string) => `Technique ${ph}`, reference: (ph: string) => `Référence ${ph}` },
    basisOf: { unknown: 'rien de mesuré', checks: 'analyses manuelles', buffers: 'tampons', check_solution: 'solution de contrôle' }, common: 'Limites et intervalle du fichier de l’installation\u202f; à défaut, usage courant.',
  },
  unseen: (probe: string) => `${probe}\u202f: un étalonnage attend une relecture`,
  review: { title: 'À relire', lead: (who: string) => `Fait par ${who}. Une autre personne relit\u202f: flacons, valeurs, verdict.`, accept: 'Relu, c’est bon', object: 'Contester', why: 'Ce qui a été vu, ou ce qui ne va pas' },
  drift: { slope: (day: string) => `D’après sa pente, usée vers le ${day}`, earliest: (day: string) => `(pas avant le ${day})`, title: 'D’un étalonnage à l’autre', perMonth: (v: string, u: string) => `${v} ± ${u} par mois`, of: (n: number) => (n > 1 ? `sur ${n} intervalles` : `sur ${n} intervalle`) },
};
