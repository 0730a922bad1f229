import type { InstrumentKind, InstrumentWord, VerificationWord } from '../../contract.instrument';
import type { instruments as shape } from '../en/instruments';

// Instruments: held against standards, and what that makes of the tests made with them.

export const instruments: typeof shape = {
  title: 'Instruments', none: 'Le fichier de l’installation ne nomme aucun instrument (docs/plant-file.md, instruments).',
  hint: 'Une analyse faite avec un instrument qui a mal lu son étalon, ou que personne n’y a comparé depuis trop longtemps, est gardée et moins sûre\u202f; l’analyse le dit.',
  kinds: { photometer: 'photomètre', comparator: 'comparateur', meter: 'portatif' } as Record<InstrumentKind, string>,
  words: { not_verified: 'pas encore vérifié', in_order: 'en ordre', overdue: 'vérification en retard', failed: 'a mal lu son étalon' } as Record<InstrumentWord, string>,
  verdicts: { none: '', within: 'dans la tolérance', outside: 'hors tolérance' } as Record<VerificationWord, string>,
  every: (days: string) => `tous les ${days}\u00a0jours`, until: (day: string) => `prochaine avant le ${day}`, verify: 'Comparer à un étalon', test: 'Pour quoi', standard: 'Étalon', standardHint: 'son nom ou sa couleur, et son numéro', nominal: 'Il devrait lire', tolerance: 'Tolérance, de part et d’autre', toleranceHint: 'selon son certificat', reading: 'Il lit',
  preview: (off: string) => `écart ${off}`, save: 'Enregistrer', cancel: 'Annuler', saved: (verdict: string) => `Enregistré\u202f: ${verdict}.`, waiting: 'Gardé sur cet appareil jusqu’à ce que le serveur soit joignable.', refused: 'Le serveur l’a refusé', dropSure: 'Jeter cette vérification pour de bon\u202f?', need: 'Ceci est nécessaire.', number: 'Pas un nombre. Des chiffres avec une virgule ou un point.', positive: 'Plus que zéro.',
  line: (reading: string, nominal: string, tolerance: string) => `lu ${reading}, devrait être ${nominal} ± ${tolerance}`, history: 'Vérifications', by: (who: string) => `par ${who}`,
  checklist: 'La trousse, avant une tournée', list: [
    'Cuves claires, sans rayures, sèches à l’intérieur\u202f; bouchons qui ferment\u202f; pas de trace de la dernière analyse.', 'Photomètre\u202f: capuchon, logement propre, pile fraîche, étalons à portée.', 'Portatifs\u202f: capteur humide et propre, un tampon ou une solution de contrôle valables.',
    'Réactifs valables et secs dans leur film\u202f; la bonne sorte pour l’instrument.', 'Agitateurs, seringue ou pipette pour diluer, eau sans demande en chlore.', 'Brosse, chiffon, flacon à échantillon, gants et lunettes là où se manipulent des produits.',
  ],
  reagents: 'Réactifs et lots',
};
