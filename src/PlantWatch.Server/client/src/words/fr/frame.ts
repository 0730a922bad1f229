import type {
  AlarmChange, AlarmState, CalibrationKind, CalibrationStatus, Measurand, PoolWord, Priority, PumpActivity, SamplePoint, Standing, TestMethod,
  Tier, Verdict,
} from '../../contract';
import type { frame as shape } from '../en/frame';
import { inText } from './inText';

// Words of the pages that do not come from the server; the subjects of the water have files of their own beside this one.

const measurand: Record<Measurand, string> = {
  none: '', ph: 'pH', orp: 'Redox', temperature: 'Température', conductivity: 'Conductivité', free_chlorine: 'Chlore libre',
  total_chlorine: 'Chlore total', combined_chlorine: 'Chlore combiné', total_alkalinity: 'TAC',
  calcium_hardness: 'Dureté calcique', cyanuric_acid: 'Acide cyanurique', dissolved_solids: 'Solides dissous', sample_flow: 'Eau d’analyse', circulation_flow: 'Circulation', filter_pressure: 'Pression filtre', turbidity: 'Turbidité', bromine: 'Brome total',
};
const pool: Record<PoolWord, string> = {
  unknown: 'Inconnu', normal: 'Normal', due: 'Analyse à faire', attention: 'Attention', alarm: 'Alarme', stop: 'Arrêt',
};
const standing: Record<Standing, string> = {
  unknown: 'Pas encore d’élément', good: 'Bon', maintenance_required: 'Maintenance requise', out_of_specification: 'Hors spécification',
  check_function: 'Contrôle de fonctionnement', failure: 'Défaillance',
};
const standingShort: Record<Standing, string> = {
  unknown: 'sans élément', good: 'bon', maintenance_required: 'maintenance', out_of_specification: 'hors spéc.',
  check_function: 'contrôle', failure: 'défaillance',
};
const verdict: Record<Verdict, string> = {
  not_comparable: 'Non comparable', agrees: 'Concorde', probe_drifts: 'La sonde dérive', check_suspect: 'L’analyse est isolée\u202f: la refaire',
  learning: 'Apprentissage en cours',
};
const priority: Record<Priority, string> = { note: 'Note', low: 'Basse', medium: 'Moyenne', high: 'Haute', critical: 'Critique' };
const alarmState: Record<AlarmState, string> = {
  normal: 'Normale', unacknowledged: 'Présente, non acquittée', acknowledged: 'Présente, acquittée',
  returned_unacknowledged: 'Disparue, non acquittée', latched_unacknowledged: 'Maintenue, non acquittée',
  latched_acknowledged: 'Maintenue, acquittée', shelved: 'Mise en attente', suppressed_by_design: 'Inhibée par conception', out_of_service: 'Hors service',
};
/** What an alarm may be about beside a measurand: two tests together, or what a laboratory counts. */
const watched: Record<string, string> = {
  combined_per_free: 'combiné sur chlore libre', combined_per_total: 'combiné sur chlore total', cyanurate_per_free: 'acide cyanurique sur chlore libre',
  colony_count: 'flore totale', escherichia_coli: 'E. coli', pseudomonas_aeruginosa: 'Pseudomonas aeruginosa', legionella: 'Légionelles',
};
const alarmChange: Record<AlarmChange, string> = {
  none: '', raised: 'Apparue', cleared: 'Disparue', acknowledged: 'Acquittée', shelved: 'Mise en attente', unshelved: 'Fin de mise en attente',
  suppressed: 'Inhibée par conception', released: 'Inhibition levée', reset: 'Réarmée', retired: 'Retirée',
  taken_out_of_service: 'Mise hors service', returned_to_service: 'Remise en service', re_alarmed: 'Toujours présente, rappelée', made_safe: 'Mise en sécurité consignée',
};
const pump: Record<PumpActivity, string> = { unknown: 'Sans nouvelles', stopped: 'Arrêtée', running: 'En marche', fault: 'En défaut' };
const method: Record<TestMethod, string> = {
  unknown: 'non précisé', photometer: 'photomètre', comparator: 'comparateur', tablet_count: 'pastilles', meter: 'portatif',
};
const point: Record<SamplePoint, string> = {
  unknown: 'Non précisé', pool: 'Dans le bassin', cell: 'Sortie de la chambre de mesure', balance_tank: 'Bac tampon', outlet: 'Point bas ou reprise du bassin',
};
const calibrationKind: Record<CalibrationKind, string> = {
  offset: 'Décalage', two_point: 'Pente en deux points', panel_adjustment: 'Réglage de l’afficheur de l’installation',
  verification: 'Vérifiée, laissée telle quelle',
};
const calibrationStatus: Record<CalibrationStatus, string> = {
  proposed: 'Proposé', approved: 'Approuvé', rejected: 'Refusé', adjusted: 'Fait sur l’afficheur',
};
const tier: Record<Tier, string> = {
  raw: 'mesures une à une', minute: '1\u00a0minute', quarter_hour: '15\u00a0minutes', hour: '1\u00a0heure', day: '1\u00a0jour',
};
const kinds: Record<string, string> = {
  swimming: 'natation', teaching: 'apprentissage', leisure: 'loisirs', therapy: 'balnéothérapie', spa: 'bain à remous', plunge: 'bain froid', paddling: 'pataugeoire',
  indoor: 'couvert', outdoor: 'plein air', chlorine: 'chlore', stabilised_chlorine: 'chlore stabilisé', salt_electrolysis: 'électrolyse au sel',
  bromine: 'brome', uv: 'UV', ozone: 'ozone',
};
const balance: Record<string, string> = { corrosive: 'agressive', balanced: 'équilibrée', scale_forming: 'entartrante' };

export const frame: typeof shape = {
  measurand, watched, pool, standing, standingShort, verdict, priority, alarmState, alarmChange, pump, method, point, calibrationKind,
  calibrationStatus, tier, kinds, balance, inText, quoted: (text: string) => `«\u00a0${text}\u00a0»`,
  product: 'PlantWatch',
  ago: (age: string) => `il y a ${age}`,
  flow: 'débit', noFlow: 'sans débit',
  below: (v: string) => `sous ${v}`, above: (v: string) => `dépasse ${v}`,
  justNow: 'à l’instant',
  never: 'jamais',
  nav: { overview: 'Bassins', check: 'Analyse', alarms: 'Alarmes', pumps: 'Pompes', record: 'Registre', skip: 'Aller au contenu', label: 'Pages' },
  theme: { label: 'Clair ou sombre', auto: 'Auto', light: 'Clair', dark: 'Sombre' },
  live: {
    live: 'En direct', connecting: 'Connexion', not: 'Plus en direct',
    banner: 'Plus en direct', since: (clock: string) => `depuis ${clock}.`, silentFor: (age: string) => `(${age})`,
    first: 'Pas encore de réponse du serveur. Nouvel essai automatique.', values: 'Voici les dernières données reçues. Nouvel essai automatique.',
    plantFile: 'Le nouveau fichier de l’installation n’a pas été pris\u202f; le précédent est en vigueur.',
    last: (state: string) => `dernier état\u202f: ${state}`,
  },
  bar: {
    more: (n: number) => (n === 1 ? '1 autre' : `${n} autres`), nothing: 'Rien n’est surveillé',
    none: 'Aucune alarme', noneThen: 'Aucune alarme aux dernières nouvelles', noneButUnknown: (n: number) => (n > 1 ? `Aucune alarme, mais ${n} bassins inconnus` : `Aucune alarme, mais ${n} bassin inconnu`), label: 'Alarmes', allSeen: 'Toutes acquittées', unknown: 'Alarmes inconnues',
    dead: 'Plus en direct', outOfService: (n: number) => `${n} hors service`,
    state: {
      normal: '', unacknowledged: 'nouvelle', acknowledged: 'vue', returned_unacknowledged: 'disparue', latched_unacknowledged: 'maintenue', latched_acknowledged: 'maintenue',
      shelved: 'mise en attente', suppressed_by_design: 'inhibée', out_of_service: 'hors service',
    } satisfies Record<AlarmState, string>,
    title: { dead: (own: string) => `Plus en direct \u00b7 ${own}`, calls: (n: number, own: string) => `(${n}) ▲ ${own}` },
  },
  overview: {
    title: 'Bassins', empty: 'Aucun fichier d’installation en vigueur, donc aucun bassin à montrer.', begin: 'Commencer par les premiers pas', waiting: 'En attente du serveur.',
    noState: 'Encore aucune nouvelle de ce bassin.', check: 'Saisir une analyse', open: 'Voir le bassin', tests: 'Dernières analyses', balance: 'Indice de saturation',
    noTest: 'pas encore analysé', due: 'À faire', overdue: 'En retard', dueAt: (what: string, clock: string) => `${what} à ${clock}`, more: (n: number) => `et ${n} de plus`,
    suspect: 'douteux', notVisible: 'Fond non visible au dernier regard', shared: 'Eau commune du circuit', last: '3 dernières heures',
    alarmsStand: (n: number) => (n === 1 ? '1 alarme présente' : `${n} alarmes présentes`), alarmsGone: (n: number) => (n === 1 ? 'disparue, non acquittée' : 'disparues, non acquittées'), alarmsWord: (n: number) => (n === 1 ? 'alarme' : 'alarmes'),
    noLimits: 'Aucune limite en vigueur, rien ne peut être dit normal.', allWell: 'Dans les limites, sondes fiables, rien à faire.', limit: 'limites', silent: 'muette', doubted: 'douteux', believed: (v: string, u: string) => `retenu ${v}\u00a0±\u00a0${u}`, noReading: 'aucune mesure',
  },
  check: {
    title: 'Analyse manuelle', pool: 'Bassin', who: 'Analysé par', when: 'Prélevé à', now: 'Maintenant', siteClock: 'à l’heure du site',
    point: 'Point de prélèvement', place: 'Endroit exact', placeHint: 'par exemple\u202f: grand bain, à gauche, à 30\u00a0cm de profondeur',
    results: 'Désinfectant, pH, température', bromineHint: 'En Br₂. Ce qu’affiche un programme chlore, multiplié par 2,25, donne le brome.', balance: 'Analyses d’équilibre', panel: 'Valeurs de l’afficheur', panelHint: 'À lire au moment du prélèvement.', panelAsked: 'Les pompes suivent cette valeur. La lire au moment du prélèvement.', panelOthers: 'Autres valeurs de l’afficheur',
    receivedNow: (v: string) => `Reçu maintenant ${v}`, testedNow: (v: string) => `analyse ${v}`, panelDiffers: 'Ce n’est pas la valeur reçue\u202f: vérifier l’échelle, l’unité, ou de quelle sonde il s’agit.',
    around: 'Autour du bassin', method: 'Méthode', bound: 'Valeur ou borne', equals: '=', below: '< sous la gamme', above: '> au-dessus de la gamme',
    dilution: 'Dilution', dilutionHint: 'Dilué, une part sur', result: (v: string) => `résultat ${v}`, combined: 'Chlore combiné',
    combinedMissing: 's’affiche dès que libre et total sont saisis', freeAboveTotal: 'Le libre dépasse le total. L’un des deux est faux\u202f: refaire l’analyse.',
    bottom: 'Fond visible', yes: 'Oui', no: 'Non', notLooked: 'Pas regardé', bathers: 'Baigneurs dans l’eau', note: 'Note', submit: 'Enregistrer',
    sending: 'Enregistrement…', another: 'Saisir une autre analyse', clear: 'Vider le formulaire', clearSure: 'Effacer toute la saisie\u202f?', kept: 'Brouillon gardé sur cet appareil.',
    notNumber: 'Pas un nombre. Des chiffres avec une virgule ou un point.', negative: 'Ne peut pas être négatif.', whole: 'Un nombre entier.', needWho: 'Dire qui a analysé.', needPool: 'Choisir le bassin.',
    needTime: 'Donner une date et une heure.', future: 'C’est dans le futur.', needSomething: 'Saisir au moins un résultat ou une observation.',
    phRange: 'Le pH est compris entre 0 et 14.', dilutionLow: 'Un ou plus.', mend: (n: number) => (n > 1 ? `${n} champs à corriger.` : `${n} champ à corriger.`),
    noPools: 'Les bassins de l’installation ne sont pas encore connus de cet appareil. Se connecter une fois, ensuite le formulaire marche aussi sans réseau.',
    storageFull: 'Ce navigateur ne peut pas garder l’analyse. Elle reste dans le formulaire\u202f; réessayer quand le serveur est joignable.',
  },
  answer: {
    saved: 'Analyse enregistrée', panel: 'Afficheur', believed: 'Retenu', probe: 'Sonde', test: 'Analyse', expected: 'Attendu', difference: 'Écart', noProbes: 'Aucune sonde à comparer avec cette analyse.', remarks: 'À regarder de plus près', inDoubt: 'd’une analyse douteuse', notJudged: 'Rien n’a encore été jugé\u202f: d’ici là comptent vos valeurs mesurées et les consignes de l’installation.',
    queued: 'Gardée sur cet appareil', queuedMore: 'Le serveur est injoignable. L’analyse part seule dès qu’il répond.', arrived: 'Envoyée depuis.',
    refused: 'Le serveur a refusé cette analyse', refusedMore: 'Corriger les champs marqués et enregistrer de nouveau. Rien n’est perdu.',
    refusedBare: 'Le serveur l’a refusée sans nommer de champ.',
  },
  outbox: {
    title: 'Sur cet appareil', waiting: 'à envoyer', refused: 'Refusée', edit: 'Ouvrir le formulaire', drop: 'Jeter', dropSure: 'Jeter cette analyse pour de bon\u202f?',
    sendNow: 'Essayer maintenant', keepsTime: (time: string) => `Garde son heure\u202f: ${time}.`, timeNow: 'Prendre l’heure actuelle', badge: (n: number) => `${n} à envoyer`,
  },
  strips: {
    gap: 'aucune mesure', partFlow: (percent: string) => `débit pendant ${percent}\u00a0% du temps`, corrected: 'corrigé', raw: 'brut', test: 'analyse', expected: 'attendu d’après l’analyse', failed: 'Impossible de récupérer les mesures.', empty: 'Aucune mesure sur cette période.',
    tier: (t: string) => `moyenne et étendue sur ${t}`, against: (e: string) => `par rapport à ${e}`, noTests: 'Aucune analyse sur cette période.', testsOnly: 'analyses', now: 'Maintenant',
    range: 'Période affichée', earlier: 'Avant', later: 'Après', closer: 'Zoomer', wider: 'Dézoomer', label: 'Courbes',
    spans: { hour: 'Heure', six_hours: '6\u00a0h', day: 'Jour', week: 'Semaine', month: 'Mois', year: 'An', five_years: '5\u00a0ans' },
    legend: '◆ analyse avec son incertitude \u00b7 ┄ brut à côté de ━ corrigé \u00b7 ombré\u202f: limites.',
    touch: 'Glisser pour déplacer, pincer pour zoomer.', keys: 'La molette (après un clic) zoome aussi\u202f; touches\u202f: flèches, pages haut et bas, + et −\u202f; la touche Début revient à maintenant.',
  },
  poolPage: {
    balance: 'Équilibre de l’eau', hocl: 'Chlore libre présent en HOCl',
    manual: 'Dernières analyses', measurand: 'Quoi', value: 'Valeur', method: 'Méthode', age: 'Âge', probes: 'Sondes', standing: 'Statut', bias: 'Biais', believed: 'Retenu', panel: 'Afficheur',
    testColumn: 'Analyse', expectedColumn: 'Attendu', reads: 'Lit', pumps: 'Pompes doseuses', due: 'À faire', nothingDue: 'Rien à faire.', alarms: 'Alarmes ouvertes', noAlarms: 'Aucune alarme ouverte.', checks: 'Analyses des 14 derniers jours', noChecks: 'Aucune analyse dans les 14 derniers jours.',
    bathers: 'Baigneurs', bottom: 'Fond', visible: 'visible', notVisible: 'non visible', origin: { raw: 'signal propre', panel_scaled: 'telle qu’à l’afficheur' }, noProbes: 'Ce bassin n’a pas de sonde.', noPumps: 'Pas de pompe doseuse.',
    common: 'retour commun', volume: (v: string) => `${v}\u00a0m³`, noTests: 'Rien n’a encore été analysé.', turnover: (h: string) => `recyclage ${h}\u00a0h`,
  },
  alarms: {
    title: 'Alarmes', standing: 'Présentes', none: 'Aucune alarme présente.', cause: 'Cause', consequence: 'Si rien n’est fait', action: 'À faire', time: 'Délai pour réagir', acknowledge: 'Acquitter', reset: 'Réarmer', oneShot: 'Seulement jusqu’à sa disparition', shelve: 'Mettre en attente',
    unshelve: 'Fin d’attente', comment: 'Commentaire', why: 'Motif', needWhy: 'Dire pourquoi.', shelveFor: 'Mise en attente pour', minutes: (n: number) => `${n}\u00a0minutes`,
    hours: (n: number) => (n > 1 ? `${n}\u00a0heures` : `${n}\u00a0heure`), raised: 'Apparue', cleared: 'disparue', acknowledgedBy: (who: string) => `acquittée par ${who}`,
    shelvedBy: (who: string, until: string) => `mise en attente par ${who}, fin ${until}`, history: 'Les 7 derniers jours', noHistory: 'Rien dans les 7 derniers jours.',
  },
  pumps: {
    title: 'Pompes', since: 'depuis', low: 'à remplir', write: 'Intervention', notes: 'Interventions sur pompes et sondes', newNote: 'Nouvelle intervention',
  },
  record: {
    title: 'Registre', sumsTitle: 'Sommes de contrôle', explain: 'Tout ce qui est arrivé est compté\u202f: reçu = stocké + doublons + refusé + en route.',
    sums: { received: 'reçu', stored: 'stocké', duplicates: 'doublons', refused: 'refusé', inFlight: 'en route' },
    closes: 'Les sommes tombent juste.', open: 'Les sommes ne tombent pas juste\u202f: des mesures manquent ou sont comptées deux fois.',
    identity: (device: string, packet: string, atLeast: string) => `Stocké par heure de l’appareil ${device}, par paquet ${packet}, au moins une fois ${atLeast}.`,
    messages: (n: string) => `Messages\u202f: ${n}.`, circuit: 'Circuit', unclaimed: 'Sujets non attribués', refusals: 'Éléments refusés', noRefusals: 'Rien de refusé.', bytes: (n: string) => `${n}\u00a0octets`, noText: '(vide)',
  },
  probe: {
    noBias: 'Aucune analyse n’a encore pu être comparée à cette sonde.', biasLabel: (v: string, u: string) => `Biais au fil du temps, maintenant ${v} ± ${u}`, biasTitle: 'Biais après chaque analyse\u202f: valeur lue moins valeur juste',
    offer: 'Proposé d’après les analyses', noOffer: 'Aucun étalonnage proposé', adjustPanel: (a: string) => `changer la valeur de l’afficheur de ${a}`, shift: (a: string) => `corrigé = brut ${a}`, slope: (s: string, a: string) => `corrigé = ${s} × brut ${a}`,
    restsOn: (n: number) => (n > 1 ? `D’après ${n} analyses.` : `D’après ${n} analyse.`), judged: 'jugé', raw: 'Tel que lu', corrected: 'Corrigé', olderChecks: (n: number) => `${n} de plus`, panelHint: 'Les pompes suivent l’afficheur, c’est donc lui qu’il faut régler\u202f; rien n’est corrigé ici en plus.',
    rawHint: 'Les mesures brutes ne changent jamais\u202f; la correction vaut à partir d’un moment.', propose: 'Proposer', waiting: 'Attend une décision', proposedBy: (who: string, at: string) => `proposé par ${who}, ${at}`,
    engineer: 'Ingénieur', doneAt: 'Fait sur l’afficheur à', holdsFrom: 'Valable à partir de', markDone: 'Fait sur l’afficheur', approve: 'Approuver', reject: 'Refuser', history: 'Étalonnages', noHistory: 'Jamais étalonnée ici.',
    decidedBy: (what: string, who: string, at: string) => `${what} par ${who}, ${at}`, range: (r: string) => `gamme ${r}`, judgements: 'Ce qu’ont dit les analyses', noJudgements: 'Aucune analyse.',
  },
  pageMissing: 'Cette page n’existe pas.', back: 'Retour aux bassins', retry: 'Réessayer', loading: 'Chargement…',
  error: { unreachable: 'Le serveur est injoignable.', kept: 'La saisie est toujours là\u202f; réessayer.', refused: 'Refusé' },
  name: 'Votre nom', needName: 'Dire qui vous êtes.', cancel: 'Annuler',
};
