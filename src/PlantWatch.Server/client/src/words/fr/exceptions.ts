import type { BreachGrade, Closing, OwedAct, RetestWord, StepKind } from '../../contract.exceptions';
import type { exceptions as shape } from '../en/exceptions';

// The exceptions: from reading to action to retest to closed.

export const exceptions: typeof shape = {
  title: 'Dépassements',
  lead: 'Chaque dépassement d’une limite ou d’un arrêt tient en une ligne\u202f: la valeur lue, l’action, l’analyse qui a suivi, et qui a clos. Doses, analyses, lavages et fermetures de bassin s’inscrivent seuls.',
  open: 'Ouverts', closed: 'Clos', noneOpen: 'Rien d’ouvert.', noneClosed: 'Rien de clos sur cette période.', counted: (n: number) => `${n} clos`,
  pool: 'Bassin', all: 'Tous les bassins', month: 'Mois', anyMonth: 'Tous les mois', table: 'En tableau (CSV)', older: 'Plus anciens', newer: 'Plus récents', pageOf: (page: number, pages: number) => `Page ${page} sur ${pages}`,
  grades: { operating: 'Limite d’exploitation', closure: 'Limite de fermeture', stop: 'Arrêt', laboratory: 'Limite de laboratoire' } as Record<BreachGrade, string>,
  marks: { reading: 'Valeur', action: 'Action', retest: 'Contrôle', closed: 'Clos' },
  notYet: 'pas encore', nothing: 'rien', probe: 'sonde', minutes: (n: number) => (n < 90 ? `après ${n}\u00a0min` : n < 2880 ? `après ${Math.floor(n / 60)}\u00a0h ${String(n % 60).padStart(2, '0')}\u00a0min` : `après ${Math.floor(n / 1440)}\u00a0j ${Math.floor((n % 1440) / 60)}\u00a0h`),
  onDuty: 'L’opérateur de service',
  owes: { act_and_retest: 'doit une action et une analyse de contrôle', retest: 'doit une analyse de contrôle', settle: 'doit une réponse\u202f: l’analyse est dans les limites et l’alarme est toujours présente', resample: 'doit un nouveau prélèvement', incident: 'suit le plan de l’incident\u202f: son décompte court, pas celui de cette ligne' } as Record<OwedAct, string>,
  by: (at: string) => `avant ${at}`, overdue: (span: string) => `en retard de ${span}`, left: (span: string) => `reste ${span}`,
  test: 'Saisir l’analyse', dose: 'Saisir une dose', resample: 'Saisir le bulletin', say: 'Dire ce qui a été fait',
  sayLead: 'Seulement ce que ni dose, ni lavage, ni fermeture, ni analyse ne disent\u202f: pompe réamorcée, eau neuve apportée, sonde nettoyée.', text: 'Ce qui a été fait', when: 'Quand', save: 'Enregistrer', need: 'Dire ce qui a été fait.', needTime: 'Dire quand.',
  closing: {
    none: '', by_retest: 'par une analyse de contrôle dans les limites', corrected: 'la valeur a été corrigée\u202f: il n’y avait pas de dépassement', by_person: 'par une personne habilitée', limit_gone: 'la limite de comparaison n’est plus en vigueur', pool_gone: 'le bassin a quitté le fichier de l’installation',
    goes_on: 'pas terminé\u202f: ce qui l’avait clos a été corrigé, et il se poursuit dans une ligne ouverte depuis',
  } as Record<Closing, string>,
  withdrawn: 'retiré par une correction', readingWithdrawn: 'La valeur a été retirée par une correction, et son alarme demande toujours une analyse.', course: (n: number) => `Tout le déroulement, ${n} ${n > 1 ? 'étapes' : 'étape'}`,
  steps: {
    seen: 'vu', words: 'dit', dose: 'dosé', pool_closed: 'bassin fermé', new_water: 'rempli à neuf', filter_washed: 'filtre lavé', retest: 'analysé', reading: 'relu', back_inside: 'sonde revenue dans les limites', reading_corrected: 'valeur corrigée\u202f; elle indiquait\u202f:', reopened: 'rouvert\u202f: ce qui l’avait clos a été retiré', incident: 'incident', job: 'intervention', calibrated: 'étalonné', incident_over: 'plus relevé volontairement',
  } as Record<StepKind, string>,
  retests: { none: '', inside: 'dans les limites', at_limit: 'à la limite', outside: 'hors limites', not_proven: 'ne prouve rien' } as Record<RetestWord, string>,
  ofPool: 'Dépassements ouverts', toAll: 'Tous les dépassements de ce bassin',
};
