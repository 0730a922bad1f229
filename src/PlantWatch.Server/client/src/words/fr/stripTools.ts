import type { MarkKind } from '../../contract.notes';
import type { Compared } from '../../pool/ghost';
import type { Look } from '../../pool/look';
import type { stripTools as shape } from '../en/stripTools';

// The tools over the strips of a pool: lines, another day, notes, marks, files.

const times = (n: number, one: string, many: string) => (n > 1 ? `${n} ${many}` : `${n} ${one}`);

export const stripTools: typeof shape = {
  lines: 'Courbes', looks: { both: 'Les deux', corrected: 'Corrigé', raw: 'Brut' } satisfies Record<Look, string>,
  compare: 'Comparer à', nothing: 'aucun autre jour', compared: { yesterday: 'la veille', last_week: 'la semaine précédente' } satisfies Record<Compared, string>, tooLong: 'jusqu’à un mois',
  ghost: (what: string, from: string, to: string) => `\u22ef ${what}\u202f: ${from} – ${to}`, ghostReads: (what: string, v: string) => `${what} ${v}`,
  files: 'Enregistrer', csv: 'Tableau (CSV)', png: 'Image (PNG)', svg: 'Dessin (SVG)',
  summary: {
    none: 'Aucune mesure sur la période affichée.', flowed: 'Débit présent à chaque mesure.', stopped: (at: string) => `Sans débit à ${at}.`, last: (v: string, at: string) => `Dernière valeur ${v} à ${at}.`, least: (v: string, at: string) => `Minimum ${v} à ${at}.`, most: (v: string, at: string) => `Maximum ${v} à ${at}.`,
    gaps: (n: number, longest: string) => (n === 0 ? 'Aucun trou.' : `${times(n, 'trou', 'trous')}, le plus long ${longest}.`),
    tests: (n: number) => `${times(n, 'analyse', 'analyses')} sur la période affichée.`,
  },
  marks: {
    label: 'Ce qui s’est passé', kinds: {
      unknown: '', test: 'Analyse', dose: 'Dose', calibration: 'Étalonnage', probe: 'Travail sur une sonde', alarm: 'Alarme', wash: 'Lavage de filtre', stock: 'Produits', job: 'Intervention', pool: 'Bassin', laboratory: 'Laboratoire', gap: 'Trou', plan: 'Fichier de l’installation',
    } satisfies Record<MarkKind, string>,
    open: { dose: 'Doses', calibration: 'Sonde', probe: 'Sonde', alarm: 'Alarme', wash: 'Pompes et filtres', stock: 'Produits', job: 'Interventions', pool: 'Registre', laboratory: 'Laboratoire', plan: 'Registre', gap: 'Registre' } as Partial<Record<MarkKind, string>>,
    one: (kind: string, subject: string, at: string) => `${kind}, ${subject}, ${at}`, several: (n: number, kinds: string, from: string, to: string) => `${n} repères, ${from} à ${to}\u202f: ${kinds}`,
    until: (at: string) => `jusqu’au ${at}`, by: (name: string) => `par ${name}`, itself: 'automatique', close: 'Fermer', more: 'Il y a plus sur cette période que de repères\u202f: voici les plus récents. Zoomer pour voir le reste.', none: 'Aucun repère sur cette période.', failed: 'Impossible de récupérer ce qui s’est passé.',
  },
  note: {
    lane: 'Notes', add: 'Écrire une note', title: 'Une note sur cette période', correcting: 'Corriger la note', retracting: 'Retirer la note', lead: 'Glisser sur les courbes pour choisir la période, ou la taper.', from: 'De', to: 'À', text: 'Ce qui a été vu ou fait', why: 'Motif du changement', whyGone: 'Motif du retrait', by: 'Écrit par',
    save: 'Enregistrer', correct: 'Corriger', retract: 'Retirer', cancel: 'Annuler', hint: 'à l’heure du site', textHint: 'Par exemple\u202f: fête scolaire, quarante enfants\u202f; ou\u202f: filtre 2 ouvert.',
    needText: 'Dire ce qui a été vu ou fait.', needBy: 'Dire qui écrit.', needWhy: 'Dire pourquoi.', needTime: 'Donner une date et une heure.', endsFirst: 'Finit avant de commencer.', toCome: 'C’est dans le futur\u202f: une note parle de ce qui a été.', tooLong: 'Au plus un an.',
    retracted: 'retirée', corrected: 'corrigée', waiting: 'à envoyer', refused: 'Refusée', edit: 'Ouvrir le formulaire', drop: 'Jeter', dropSure: 'Jeter cette note pour de bon\u202f?', earlier: 'Ce qu’elle disait avant', saidAt: (who: string, at: string) => `${who}, ${at}`, span: (from: string, to: string) => (from === to ? from : `${from} – ${to}`), label: (text: string, span: string, state: string) => `Note, ${span}\u202f: ${text}${state && ` (${state})`}`, moreRows: (n: number) => `et ${n} de plus\u202f: zoomer`, failed: 'Impossible de récupérer les notes.', gone: 'Une note retirée reste au registre.',
  },
  keys: 'N écrit une note\u202f; glisser avec Maj, ou après un appui long, en choisit la période.',
};
