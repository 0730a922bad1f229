import type { pumpPage as shape } from '../en/pumpPage';

// A dosing pump by what the water does.
export const pumpPage: typeof shape = {
  verdict: 'D’après la réaction de l’eau', notJudged: 'L’eau ne juge pas cette pompe\u202f:', seeFile: 'Débits, coups et titres sont dans le fichier de l’installation.',
  waiting: 'Encore aucune nouvelle de son eau.',
  learning: (days: string, wanted: string) => `Apprentissage de ce que ce bassin demande d’ordinaire\u202f: ${days}\u00a0jours sur ${wanted}. D’ici là, seul est dit ce que montrent des mesures isolées.`,
  well: 'Elle fait ce que disent ses coups, autant que l’eau le montre.', suspicion: (percent: string) => `La panne la plus probable l’est à ${percent}.`, hardly: 'moins de 1\u00a0%',
  since: 'semble-t-il depuis', missing: (litres: string) => `manque à ce jour ${litres}`, unasked: (litres: string) => `venu à ce jour sans demande\u202f: ${litres}`, certain: (percent: string) => `certitude ${percent}`,
  moved: (expected: string, observed: string) => `le pH aurait dû bouger de ${expected} et a bougé de ${observed}`, toAlarm: 'Voir son alarme', action: 'À faire',
  amounts: 'Quantités', today: 'commandé aujourd’hui', limit: (litres: string) => `plausible par jour ${litres}`, over: (span: string) => `commandé en ${span}`, fell: (span: string) => `baisse du bac en ${span}`, unknown: 'inconnu',
  beside: 'Le volume commandé est ce que ses coups ou sa durée de marche devraient délivrer\u202f; la baisse du bac est ce qui en est sorti. Si c’est arrivé, l’eau le dit.',
  jobs: 'Interventions', newJob: 'Intervention', course: 'Déroulement', spans: { 24: '24\u00a0heures', 72: '3\u00a0jours', 168: '7\u00a0jours' } as Record<number, string>, range: 'Période affichée',
  driven: 'Commandé', usual: 'habituel', seen: 'vu', expected: 'attendu', tank: 'Bac', unit: 'L/h', noCourse: 'Rien n’est connu de cette période.',
  legend: 'Plein\u202f: ce qui a été. Tireté\u202f: ce que le bassin demande d’ordinaire en chlore à cette heure, ou le pH que les coups auraient dû donner\u202f; toutes les huit heures, il repart de ce qui est vu. Coin\u202f: une alarme ou une intervention.',
  kept: 'Le serveur ne répond pas\u202f: voici l’état d’alors.', marks: 'Alarmes et interventions de cette période', kinds: { alarm: 'Alarme', cleared: 'Disparue', job: 'Intervention' }, open: 'Ouvrir la page de cette pompe',
};
