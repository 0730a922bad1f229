import type { GateWord, OperatingState } from '../../contract.poolState';
import type { poolState as shape } from '../en/poolState';
import { of } from './elision';

// How a pool is run, and what has to be so before it opens.

export const poolState: typeof shape = {
  title: 'Exploitation',
  states: { not_stated: 'Personne ne l’a dit', open: 'Ouvert', closed: 'Fermé', covered: 'Couvert', drained: 'Vidangé' } as Record<OperatingState, string>,
  forCause: 'pour cause', since: 'depuis', by: (name: string) => `indiqué par ${name}`,
  acts: { open: 'Ouvrir', closed: 'Fermer', covered: 'Couvrir', drained: 'Vidanger' } as Record<Exclude<OperatingState, 'not_stated'>, string>,
  gate: 'Avant l’ouverture', gateHint: 'Ce que PlantWatch peut voir. Regarder le bassin, les profondeurs et le matériel de secours selon vos propres consignes\u202f; elles passent avant cette liste.',
  marks: { passed: 'rempli', not_passed: 'non rempli', not_known: 'inconnu' } as Record<GateWord, string>,
  signers: (names: string) => `Il a été fermé pour cause\u202f: il ouvre sur signature ${of(names)}, avec un motif.`, noSigners: 'Il a été fermé pour cause, et le fichier de l’installation ne nomme personne qui puisse signer l’ouverture\u202f: un responsable de permanence, un ingénieur ou un administrateur.',
  history: 'Ouvertures et fermetures passées', historyTitle: 'Bassins ouverts et fermés', noHistory: 'Personne n’a encore ouvert ni fermé un bassin.', change: (before: string, now: string) => `${before} → ${now}`, byIncident: 'par un incident', newWater: 'eau neuve',
  test: 'Analyser', why: 'Motif', cause: 'Quelque chose n’allait pas', refilled: 'Il contient une eau neuve',
  refilledHint: 'Alors toutes les analyses antérieures sont écartées.', needWhy: 'Dire pourquoi.', cancel: 'Annuler', unreachable: 'Impossible de récupérer la liste.',
};
