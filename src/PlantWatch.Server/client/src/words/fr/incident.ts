import type { incident as shape } from '../en/incident';

// Contamination incidents.

export const incident: typeof shape = {
  lead: 'Quelque chose est tombé dans l’eau\u202f? D’abord, tout le monde dehors. Ensuite le déclarer ici\u202f: le bassin compte comme fermé jusqu’à ce qu’une personne close l’incident.',
  advice: 'Un plan pour travailler, pas un ordre. Les règles locales et l’autorité sanitaire passent d’abord.',
  what: 'Que s’est-il passé\u202f?', kinds: {
    unknown: '', formed_stool: 'Selles moulées', diarrhoeal_stool: 'Selles molles ou diarrhéiques', vomit: 'Vomissures', blood: 'Sang', deck_spill: 'Liquide biologique sur la plage',
  },
  authority: 'Les chiffres de qui\u202f?', authorityHint: 'Les autorités diffèrent. Prendre celle que nomment les règles locales\u202f; elles ne sont jamais mélangées.',
  when: 'Quand\u202f?', justNow: 'À l’instant', earlier: 'Plus tôt', whenHint: 'Les analyses comptent à partir de là.', note: 'Autre chose', declare: 'Déclarer et fermer le bassin', declareDeck: 'Déclarer',
  needKind: 'Dire ce qui s’est passé', needAuthority: 'Choisir les chiffres à suivre', needWhen: 'Dire quand',
  closedTo: 'Fermé aux baigneurs', deckOpen: 'Tenir le public à l’écart de l’endroit', declaredBy: (who: string, at: string) => `déclaré par ${who}, ${at}`, happened: (at: string) => `survenu ${at}`,
  word: {
    refused: 'Pas de décompte', not_started: 'Pas commencé', running: 'Décompte en cours', paused: 'En pause', test_missing: 'Arrêté\u202f: analyse manquante', reached: 'Durée atteinte',
  },
  left: 'Pas encore prouvé', leftAt: (residual: string) => `à ${residual}\u00a0mg/L`, done: 'Prouvé par analyses', of: (done: string, all: string) => `${done} sur ${all}`,
  contact: 'mg\u00b7min/L', minutes: 'min', hours: 'h', nextTest: 'Prochaine analyse avant', inTime: (span: string) => `dans ${span}`, late: (span: string) => `retard de ${span}`,
  earliest: 'Atteint au plus tôt', earliestHint: 'si une analyse retrouve alors le résiduel. Sans promesse.', started: 'Commencé', reachedAt: 'Prouvé à',
  enter: 'Saisir une analyse', onlyTests: 'Seules les analyses manuelles font avancer ce décompte, jamais une sonde.',
  tests: 'Analyses depuis l’événement', noTests: 'Aucune analyse.', table: { at: 'Prélevé', place: 'Lieu', residual: 'Cl mg/L', ph: 'pH', celsius: '°C', gained: 'Ajoute' },
  lowest: 'Point bas', counts: 'compte', places: { Pool: 'Bassin', Cell: 'Chambre de mesure', BalanceTank: 'Bac tampon', Unknown: 'Lieu non précisé', Outlet: 'Point bas' } as Record<string, string>,
  strip: 'Résiduel au fil du temps', stripSaid: (n: number, share: string) => `${n} ${n > 1 ? 'analyses qui comptent' : 'analyse qui compte'}\u202f; ${share} pour cent de la durée prouvés. La partie pleine est ce qui compte.`,
  stripKey: '◆ compte \u00b7 ◇ ne compte pas \u00b7 plein\u202f: compté \u00b7 ┄ résiduel minimal',
  steps: 'À faire', byFigures: 'Compté selon', others: 'Ce que demandent d’autres autorités', allRows: 'Toutes les lignes de cette autorité',
  row: {
    dilute: (c: string) => `Acide cyanurique au-dessus de ${c}\u202f: diluer d’abord, pas de décompte`, none: 'Rien à tenir dans le bassin', hold: (level: string, time: string) => `${level}\u00a0mg/L pendant ${time}`,
    contact: (ct: string) => `Temps de contact ${ct}\u00a0mg\u00b7min/L`, water: (ph: string, celsius: string) => `pH ${ph}, ${celsius}\u00a0°C ou plus chaud`, upTo: (v: string) => `jusqu’à ${v}`,
    cyanurate: (range: string) => `acide cyanurique ${range}\u00a0mg/L`, without: 'sans acide cyanurique', start: (v: string) => `départ à ${v}\u00a0mg/L dans tout le bassin`, notCounted: 'montré seulement, ne sert pas au décompte',
  },
  notes: 'Notes', noNotes: 'Rien de noté.', addNote: 'Noter', noteWhat: 'Ce qui a été fait ou vu', needText: 'Dire ce qui a été fait ou vu',
  close: 'Clore l’incident', closeLead: 'La clôture permet d’ouvrir le bassin. PlantWatch ne décide rien\u202f: la décision est la vôtre. À regarder d’abord.', why: 'Pourquoi il peut être clos', needWhy: 'Dire pourquoi',
  closeNow: 'Clore', notReached: 'La durée n’est pas prouvée par des analyses. Ne clore maintenant que s’il n’y a pas eu d’incident, ou si l’autorité le dit.',
  past: 'Incidents clos', noPast: 'Aucun.', closedBy: (who: string, at: string) => `clos par ${who}, ${at}`, poolGone: 'son bassin a quitté le fichier de l’installation', share: (v: string) => `${v}\u00a0% de la durée prouvés`,
  more: 'En déclarer un autre', eachPool: 'Chaque bassin de cette eau est tenu et analysé séparément',
  inSharedWater: (name: string) => `Ce bassin partage son eau avec ${name}, où un incident est ouvert\u202f: il est fermé aussi, et analysé séparément.`, toIt: 'Voir l’incident',
};
