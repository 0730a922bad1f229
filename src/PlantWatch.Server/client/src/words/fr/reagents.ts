import type { ReagentUse, ReagentWord } from '../../contract.reagent';
import type { reagents as shape } from '../en/reagents';
import { of } from './elision';

// Reagents: lots, days, and what a test with an old one is worth.

export const reagents: typeof shape = {
  title: 'Réactifs', none: 'Le fichier de l’installation ne nomme aucun réactif (docs/plant-file.md, reagents).',
  hint: 'Une analyse faite avec un réactif périmé est gardée et tenue pour douteuse\u202f: elle peut déclencher une alarme et n’en lève aucune, n’ouvre aucun bassin et ne dit rien d’une sonde.',
  words: { not_noted: 'aucun lot noté', in_date: 'valable', order: 'en commander', out_of_date: 'périmé' } as Record<ReagentWord, string>,
  uses: { any: '', photometer: 'photomètre', comparator: 'comparateur', tablet_count: 'pastilles', calibration: 'pour l’étalonnage' } as Record<ReagentUse, string>,
  lotSaid: (lot: string) => `Lot ${lot}`, opened: 'ouvert', by: (name: string) => `noté par ${name}`, until: (time: string) => `valable jusqu’au ${time}`, life: (days: string) => `${days}\u00a0jours après ouverture`,
  open: 'Noter un lot', lot: 'Numéro de lot', lastDay: 'Dernier jour imprimé dessus', lastDayHint: 'Si un mois est imprimé, son dernier jour.', openedAt: 'Ouvert', save: 'Noter', cancel: 'Annuler',
  needLot: 'Le numéro tel qu’imprimé.', needDay: 'Le jour tel qu’imprimé.', needOpened: 'Quand il a été ouvert.', noted: (lot: string, name: string) => `Le lot ${lot} ${of(name)} est noté.`,
  due: { order: (name: string, time: string) => `${name}\u202f: valable jusqu’au ${time}, en commander`, out_of_date: (name: string) => `${name}\u202f: périmé` },
  inForm: (name: string) => `${name}\u202f: réactif périmé. Le résultat est gardé, tenu pour douteux, et ne lève rien tant qu’il n’est pas refait avec un réactif frais.`,
};
