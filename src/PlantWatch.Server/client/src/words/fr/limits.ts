import type { Holds, LimitsWord, RowGrade, RowProvenance } from '../../contract.limits';
import type { limits as shape } from '../en/limits';

// Limit packs: what was picked, what is confirmed, what holds.

const rows = (n: number) => (n > 1 ? `${n} lignes` : `${n} ligne`);

export const limits: typeof shape = {
  title: 'Limites', loading: 'Demande des limites.',
  lead: 'Un jeu de limites est une copie de ce que demande une autorité. Une ligne ne limite rien tant qu’une personne ne l’a pas comparée au document lui-même. Les règles locales passent d’abord.',
  noPack: 'Aucun jeu de limites choisi.',
  noPackMeans: 'Seules sont surveillées les limites que le fichier de l’installation donne lui-même à ses bassins, et personne ne les a comparées ici à une règle. Pour suivre une autorité, nommer son jeu dans le fichier de l’installation et le faire relire\u202f:',
  noPackKey: 'limit_pack: who-2006', noPackList: 'Jeux fournis avec le serveur',
  superseded: 'remplacé', supersededMeans: 'Une édition plus récente l’a remplacé.',
  progress: (done: number, all: number) => (done > 1 ? `${done} confirmées sur ${rows(all)}` : `${done} confirmée sur ${rows(all)}`),
  allDone: 'Toutes les lignes qui concernent ces bassins sont confirmées.',
  filter: 'Seulement les lignes qui concernent mes bassins', shown: (n: number, all: number) => `Affichées\u202f: ${n} sur ${all}`, noneShown: 'Aucune ligne de ce jeu ne concerne ces bassins.',
  by: 'Confirmé par', document: 'Document et article en main', documentHint: 'Par exemple titre, édition et paragraphe. Gardé sur cet appareil pour la ligne suivante.',
  may: (names: string) => `Peuvent confirmer\u202f: ${names}.`, anybody: 'Si le fichier de l’installation ne liste personne, tout le monde peut confirmer\u202f; sinon, un ingénieur ou un administrateur.',
  needDocument: 'Nommer le document et l’article sous vos yeux.', needWhy: 'Dire pourquoi la confirmation est retirée.',
  confirm: 'Confirmer', notHere: 'Ne concerne pas ce site', revoke: 'Retirer', why: 'Motif', cancel: 'Annuler', send: 'Retirer',
  confirmedBy: (by: string, at: string) => `Confirmé par ${by}, ${at}`, judgedAway: (by: string, at: string) => `Ne concerne pas cette installation, selon ${by}, ${at}`,
  waits: 'Non confirmé', changed: 'Cette ligne a changé depuis sa confirmation et reste à confirmer de nouveau.',
  toJudge: 'Au jugement d’une personne', pools: 'Bassins', source: 'Source', readOnly: 'Pour lecture\u202f: ne fixe aucune valeur surveillée.',
  raises: (by: string) => `relève le minimum de ${by}`, least: (v: string) => `≥ ${v}`, most: (v: string) => `≤ ${v}`, between: (a: string, b: string) => `${a} à ${b}`,
  holds: { yes: 's’applique', unknown: 'inconnu', no: 'ne s’applique pas' } as Record<Holds, string>,
  grades: { operating: 'limite d’exploitation', closure: 'ferme le bassin', guide: 'repère, jamais une alarme' } as Record<RowGrade, string>,
  provenance: {
    from_memory: 'De mémoire\u202f: à vérifier dans le document', secondary: 'De seconde main\u202f: à vérifier dans le document', published: 'Vu dans le document ou sur une page officielle',
  } as Record<RowProvenance, string>,
  stops: 'Arrêts toujours valables', stopsMean: 'En dehors, personne ne devrait être dans l’eau, quoi que disent les limites. Usage courant\u202f; les règles locales passent d’abord.',
  stopsEdit: 'Le fichier de l’installation peut en resserrer un avec un motif\u202f; en desserrer un demande un administrateur nommé. Aucun ne peut être supprimé.',
  bottom: 'Fond du bassin', bottomSeen: 'doit être vu', usual: (range: string) => `d’ordinaire ${range}`, stopBy: (by: string) => `${by} en répond`,
  now: 'En vigueur maintenant', own: 'propres à l’installation', noBounds: 'Rien n’est surveillé.',
  byBalance: 'Comparé à l’équilibre que donne un jeu d’analyses complet (R-018)\u202f: pH, TAC, dureté calcique et température.', byStop: 'Surveillé par l’arrêt\u202f: chaque analyse demande si le fond est visible.',
  undecided: 'Indécidable', notMeasured: 'Non mesuré ici', notMeasuredMeans: 'Le bassin n’a pas de sonde pour cela et l’autorité n’en exige pas. Rien n’attend ces lignes.',
  turned: (range: string, own: string) => `Surveillé comme ${range} par rapport à ${own}, l’électrode de la sonde du bassin.`,
  turnedFrom: (against: string) => `La ligne est par rapport à ${against}\u202f: convertie avec les potentiels à 25\u00a0°C.`,
  turnedOpen: (against: string, spread: string) => `La ligne dit ${against} sans son remplissage, ce qui laisse ${spread}\u00a0mV ouverts\u202f: la borne la plus stricte est prise.`,
  turnedUnnamed: (spread: string) => `La ligne ne nomme aucune électrode, ce qui laisse ${spread}\u00a0mV ouverts entre celles des sondes\u202f: la borne la plus stricte est prise.`, showRow: 'Voir la ligne',
  words: { none: 'Aucune limite', unconfirmed: 'Aucune limite en vigueur\u202f: lignes non confirmées', own_only: 'Limites propres à l’installation', in_force: 'Limites en vigueur' } as Record<LimitsWord, string>,
  poolWaits: (n: number) => `Aucune limite en vigueur\u202f: ${rows(n)} à confirmer`, poolNone: 'Aucune limite\u202f: rien n’est fixé pour ce bassin', poolOwn: 'Surveillées\u202f: les limites propres à l’installation',
};
