import type { start as shape } from '../en/start';
import { of } from './elision';

// The first steps of an empty plant.
export const start: typeof shape = {
  title: 'Premiers pas', lead: 'Cinq étapes courtes jusqu’à la première valeur. Chacune est écrite au fichier de l’installation au fur et à mesure\u202f: s’arrêter à tout moment, et reprendre au même point.',
  step: (n: number, all: number) => `Étape ${n} sur ${all}`, done: 'fait', now: 'maintenant', later: 'à faire', next: 'Continuer', save: 'Enregistrer et continuer', saving: 'Enregistrement', change: 'Changer dans les réglages', optional: 'facultatif',
  steps: { site: 'Nommer l’installation', pool: 'Ajouter un bassin', probe: 'Choisir ce qui est entendu', pack: 'Choisir un jeu de limites', value: 'Voir la première valeur' },
  readOnly: 'Le fichier de l’installation ne peut pas être écrit d’ici\u202f: lui ou son dossier est en lecture seule. Le rendre accessible en écriture, ou l’écrire à la main\u202f; la page des réglages a le texte à copier.',
  broken: 'Le fichier de l’installation a des problèmes. Les corriger d’abord sur la page des réglages.', toSettings: 'Voir les réglages',
  why: { site: 'Premiers pas\u202f: l’installation', pool: 'Premiers pas\u202f: un bassin', probe: 'Premiers pas\u202f: une sonde', pack: 'Premiers pas\u202f: le jeu de limites' },
  fileHead: '# L’installation telle qu’elle est construite. Se modifie ici comme sur la page\u202f; docs/plant-file.md la parcourt clé par clé.',
  site: {
    name: 'Nom de l’installation', zone: 'Fuseau horaire', zoneHint: 'Décide de ce qu’est un jour et de quand il est 07:30. Proposé\u202f: celui de ce navigateur.', units: 'Unités de mesure employées',
    unitNames: { metric: 'métriques', us: 'États-Unis', imperial: 'impériales' }, needName: 'Donner un nom à l’installation.', needZone: 'Choisir un fuseau horaire.', long: 'Au plus 100 caractères.',
  },
  pool: {
    name: 'Nom du bassin', kind: 'Usage', setting: 'Lieu', disinfectant: 'Désinfectant', volume: 'Volume d’eau', volumeHint: 'Une estimation suffit pour commencer\u202f: aucune dose n’est calculée avant que quelqu’un l’ait confirmé. Longueur × largeur × profondeur moyenne, en mètres, donne des m³.',
    turnover: 'Durée de recyclage', turnoverHint: 'Temps où l’eau des bassins fait un tour, comme prévu. Sans elle, le débit n’est comparé à rien.',
    circuit: 'Traitement de l’eau', own: 'Ses propres filtres, dosage et bac tampon', shares: (name: string) => `Partage ceux ${of(name)}`, circuitName: (pool: string) => `Eau ${of(pool)}`,
    choose: 'Choisir', needName: 'Donner un nom au bassin.', needKind: 'Dire l’usage.', needSetting: 'Dire le lieu.', needDisinfectant: 'Dire le désinfectant.', needVolume: 'Un nombre supérieur à 0, en m³.', needTurnover: 'Un nombre supérieur à 0, en heures, ou rien.',
    stabilised: 'Stabilisé\u202f: de l’acide cyanurique est dans l’eau, par dichlore, trichlore ou seul.', another: 'Ajouter un bassin', notKnown: 'Non demandés ici, donc inconnus\u202f: bac tampon, filtres, second traitement, pompes doseuses. Chacun s’ajoute dans les réglages une fois connu.',
    kinds: { swimming: 'Natation', teaching: 'Apprentissage', leisure: 'Loisirs', therapy: 'Balnéothérapie', spa: 'Bain à remous', plunge: 'Bain froid', paddling: 'Pataugeoire' }, settings: { indoor: 'Couvert', outdoor: 'Plein air' },
    disinfectants: { chlorine: 'Chlore, non stabilisé', stabilised_chlorine: 'Chlore, stabilisé', salt_electrolysis: 'Chlore par électrolyse au sel', bromine: 'Brome' },
  },
  probe: {
    listening: 'Écoute', broker: 'Courtier MQTT', address: 'Les appareils publient vers', nothing: 'Rien n’a encore été entendu. Les sujets apparaissent ici dans la seconde qui suit leur prochain message.',
    how: 'Diriger un appareil ou une passerelle vers cette adresse, en QoS 1 et sans l’option retain. Pour essayer sans installation, simulators/README.md dit comment lancer une source.',
    heard: (n: number) => (n > 1 ? `${n} sujets entendus` : `${n} sujet entendu`), forgotten: (n: number) => (n > 1 ? `${n} sujets plus anciens ont cédé la place à de plus récents.` : `${n} sujet plus ancien a cédé la place à un plus récent.`), every: (s: string) => `toutes les ${s}\u00a0s`, once: 'une fois à ce jour', retained: 'retenu par le courtier, pas une nouvelle mesure',
    takenBy: (name: string) => `lu par ${name}`, take: 'Prendre', takeNamed: (what: string) => `Prendre ${what}`, asNumber: 'simple nombre', asSenml: 'SenML JSON', asCbor: 'SenML CBOR', filter: 'Montrer les sujets avec', noneLeft: 'Aucun sujet n’a ces lettres.', more: (n: number) => `${n} de plus\u202f; taper quelques lettres du sujet pour en trouver un.`,
    measurand: 'Ce qu’elle mesure', name: 'Nom', pool: 'Bassin', mixed: 'Le retour mélangé de', origin: 'De qui est la valeur', raw: 'Le signal propre de la sonde', rawMeans: 'PlantWatch peut la corriger.', panel: 'Ce qu’affiche la régulation et d’après quoi elle dose', panelMeans: 'Elle ne se règle que sur l’afficheur.',
    electrode: 'Électrode de référence', electrodeHint: 'Sans elle, des millivolts ne veulent rien dire. Elle figure sur la sonde ou dans ses papiers.', unit: 'Unité d’envoi', low: 'Minimum que l’appareil peut montrer', high: 'Maximum que l’appareil peut montrer', rangeHint: 'Un nombre en dehors est refusé et gardé.', every_: 'Une mesure est attendue toutes les', seconds: 's',
    needMeasurand: 'Dire ce qu’elle mesure.', needName: 'Donner un nom.', needOrigin: 'Dire de qui est la valeur, pour que rien ne soit corrigé deux fois.', needElectrode: 'Nommer l’électrode, par exemple Ag/AgCl 3 M.', needRange: 'Deux nombres, le plus petit d’abord.', needEvery: 'Un nombre supérieur à 0, au plus 86400.',
    save: 'Ajouter la sonde', cancel: 'Pas celle-ci', added: (name: string) => `${name}\u202f: ajoutée.`, goOn: 'Continuer avec ce choix', without: 'Continuer sans sonde',
  },
  pack: {
    lead: 'Un jeu de limites est une copie de ce que demande une autorité. Chacune de ses lignes attend qu’une personne l’ait comparée au document\u202f; d’ici là, elle ne limite rien. Les règles locales passent d’abord.',
    rows: (n: number) => (n > 1 ? `${n} lignes` : `${n} ligne`), memory: (n: number) => `${n} de mémoire`, choose: 'Jeu de limites', needPack: 'En choisir un, ou continuer sans.', take: 'Prendre ce jeu', without: 'Continuer sans', older: 'Éditions qu’une plus récente a remplacées',
  },
  value: {
    waiting: 'En attente de la première valeur.', noProbe: 'Aucune sonde choisie\u202f: les valeurs viennent à la main, de la page Analyse.', there: 'La première valeur est là.', toOverview: 'Voir les bassins', toCheck: 'Saisir une première analyse',
    remains: 'Ce qui reste, quand il y aura le temps', volume: 'Confirmer le volume de chaque bassin\u202f; aucune dose n’est calculée avant', limits: 'Confirmer les lignes du jeu de limites', own: 'Choisir un jeu de limites, ou donner à chaque bassin ses propres limites', people: 'Nommer les personnes et ce qu’elles peuvent signer', checks: 'Dire quelles analyses sont à faire quand', pumps: 'Ajouter pompes doseuses, produits et bacs', telling: 'Dire qui est prévenu des alarmes',
  },
};
