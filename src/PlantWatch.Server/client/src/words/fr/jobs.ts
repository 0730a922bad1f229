import type { JobState } from '../../contract.words';
import type { jobs as shape } from '../en/jobs';

// Jobs of maintenance: what is to be done, who is on it, whether it helped.

const state: Record<JobState, string> = { open: 'Ouverte', in_hand: 'En cours', waiting_for_parts: 'Attend des pièces', done: 'Faite' };

export const jobs: typeof shape = {
  title: 'Interventions', lead: 'Ce qui est en panne, qui s’en occupe, et si la réparation a servi. Ce dernier point, pompes et sondes le disent elles-mêmes, sous un jour.', state,
  failed: 'Réparations sans effet', open: 'Ouvertes', in_hand: 'En cours', waiting_for_parts: 'Attendent des pièces', watched: 'Faites, effet surveillé', over: 'Terminées',
  none: 'Aucune intervention ici.', nothing: 'Aucune panne notée.', newJob: 'Nouvelle', carryOn: 'Poursuivre', again: 'Reprendre', asset: 'Sur quoi', alarm: 'Répond à l’alarme', noAlarm: 'aucune',
  seen: 'Ce qui a été vu', done: 'Ce qui a été fait', stateLabel: 'État', save: 'Enregistrer', needAsset: 'Choisir sur quoi elle porte.', needSeen: 'Dire ce qui a été vu.', needDone: 'Dire ce qui a été fait.',
  linked: 'répond à une alarme', minutes: 'Minutes de travail, en tout', needMinutes: 'Minutes entières, de 0 à 10\u202f080.', parts: 'Pièces posées', part: 'Pièce', count: 'Combien', number: 'Référence', addPart: 'Ajouter une pièce', dropPart: 'Enlever', needPart: 'Nommer la pièce et indiquer combien, de 1 à 10\u202f000.',
  parted: (n: number, name: string) => `${n} × ${name}`, worked: (m: number) => `${m}\u00a0min de travail`, judgedBy: 'jugé par', since: (who: string) => `écrite d’abord par ${who}`, watching: 'Les signaux sont surveillés\u202f; un jour de calme le prouve.',
  draft: 'Brouillon gardé sur cet appareil\u202f; les photos une fois arrivées.', unkept: 'Cet appareil n’a plus de place pour le brouillon\u202f: l’enregistrer avant de quitter cette page.', unsaved: 'Écrites et pas enregistrées', goOn: 'Continuer',
  pictures: 'Photos', addPicture: 'Prendre ou choisir une photo', dropPicture: 'Écarter', pictureOf: 'Photo de cette intervention', pictureNo: (n: number, of: string) => `Photo ${n} de\u202f: ${of}`, pictureHint: 'De la panne et de la réparation\u202f; pas de personnes. Elle est réduite ici, et le lieu de prise de vue n’est pas envoyé.',
  pictureRefused: 'Le serveur n’a pas pris cette photo.', going: 'en route', waits: 'attend le serveur\u202f; part seule tant que ce formulaire est ouvert', notRead: (name: string) => `${name}\u202f: illisible comme photo`, needPictures: 'Une photo n’est pas arrivée\u202f: l’attendre, ou l’écarter.',
  kit: 'Réactifs, tampons et solutions', toKit: 'Voir les lots', replaceBy: (at: string) => `à remplacer avant le ${at}`, noLot: 'aucun lot noté', orderNow: 'Moins de deux semaines\u202f: en commander un autre.',
  planned: 'Travaux planifiés', noPlanned: 'Le fichier de l’installation ne planifie aucun travail.', every: (d: string) => `tous les ${d}\u00a0jours`, due: 'à faire', overdue: 'en retard', last: 'fait', neverDone: 'jamais fait ici', writeDown: 'Noter', planOf: 'planifiée',
  often: 'Fréquence des pannes', thing: 'Élément', failures: 'Pannes', mean: 'Temps moyen entre pannes, jours', between: '90\u00a0% du temps entre', repair: 'Temps moyen de réparation, h', offender: 'pannes à répétition', atLeast: (d: string) => `au moins ${d}`,
  oftenNote: 'Sur l’année écoulée, d’après les interventions écrites ici\u202f; les travaux planifiés ne comptent pas. La moyenne est le temps en service divisé par les pannes, son intervalle celui d’un comptage d’événements rares\u202f: peu de pannes disent peu.',
  assets: { circuits: 'Circuit', pools: 'Bassin', probes: 'Sonde', pumps: 'Pompe', filters: 'Filtre' },
};
