import type { handover as shape } from '../en/handover';
import { of } from './elision';

/** The page that one shift hands to the next. */
export const handover: typeof shape = {
  title: 'Relève', lead: 'Ce que la personne qui arrive doit savoir, à l’instant présent. À lire ensemble, devant l’installation.', last: (h: number) => (h > 1 ? `Les ${h} dernières heures` : 'La dernière heure'), span: 'Remonter', hours: (h: number) => (h > 1 ? `${h}\u00a0heures` : `${h}\u00a0heure`),
  pools: 'Bassins', run: 'exploité comme', alarms: 'Alarmes présentes', noAlarms: 'Aucune alarme présente.', aside: 'De côté\u202f: mises en attente, hors service, inhibées', noAside: 'Rien de côté.', until: 'jusqu’au',
  jobs: 'Interventions en cours', noJobs: 'Aucune intervention ouverte.', due: 'À faire', noDue: 'Aucune analyse ni aucun travail planifié d’ici demain.', check: 'Analyse', overdue: 'en retard depuis', dueAt: 'à faire',
  happened: 'Ce qui s’est passé', quiet: 'Rien n’a été écrit sur cette période.', print: 'Imprimer', incidents: 'Incidents ouverts', kinds: { alarm: 'Alarme', check: 'Analyse', job: 'Intervention', pool: 'Bassin' },
  tested: (by: string, what: string) => `${what}, par ${by}`,
  since: (from: string | null, to: string, at: string) => `Depuis ${from ? `la relève ${of(from)} par ${to}` : `la prise de service ${of(to)}`}, ${at}`, neverSigned: 'Aucune relève signée à ce jour',
  moves: { new: 'nouveau', changed: 'changé', gone: 'terminé', same: '', none: '' }, nothingMoved: 'Rien n’a bougé depuis.', firstLead: 'À partir de la première signature, ceci indique ce qui est nouveau depuis.',
  waits: (from: string) => `${from} a écrit une relève que personne n’a signée`, wrote: (at: string) => `Écrit ${at}`,
  leave: 'La personne qui part écrit', leaveHint: 'Ce qu’aucun écran ne sait\u202f: essais faits, personnes appelées, points à surveiller.', note: 'À savoir pour la suite', leaveName: 'Nom de la personne qui part', saveNote: 'Écrire la relève', another: 'Une autre attend une signature. Elle reste au registre comme non signée.', wroteIt: 'Écrite. Elle attend la signature de la personne qui arrive.',
  come: 'La personne qui arrive signe', comeHint: 'Signer, c’est dire avoir lu ce qui est en cours et prendre le service. Rien ne change dans l’installation.', without: 'Personne n’a écrit de relève\u202f; le service peut être pris sans, et le registre le dit.', comeName: 'Nom de la personne qui arrive', remark: 'À ajouter (facultatif)', signIt: 'Signer', signedIt: 'Signé.', readAgain: 'Relire',
  lines: (n: number) => (n > 1 ? `Les ${n} lignes signées` : 'La ligne signée'), noLines: 'Rien en cours.', needNote: 'Écrire ce que la personne qui arrive doit savoir.',
  past: 'Relèves antérieures', noPast: 'Aucune.', unsigned: 'jamais signée', waiting: 'à signer', signedBy: (to: string, at: string) => `signée par ${to}, ${at}`, noNote: 'service pris sans note', altered: 'Les lignes conservées ne sont pas celles qui ont été signées.',
  states: { incident: 'Incident', due: 'à faire', overdue: 'en retard', did_not_help: 'Sans effet' } as Record<string, string>, parts: { unknown: '', pool: 'Bassin', alarm: 'Alarme', put_away: 'De côté', job: 'Intervention', task: 'Travail planifié', check: 'Analyse' },
  sign: 'Nom de la personne qui part, nom de la personne qui arrive, heure\u202f:',
};
