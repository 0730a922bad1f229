import type { Measurand } from '../../contract';
import type { IndexKey } from '../../contract.balance';
import type { know as shape } from '../en/know';
import { inText } from './inText';

// How a number is known: where it comes from, how old it is, how sure, what it means, and by which source. The sources are those of docs/sources.md and docs/rules.md.

const means: Partial<Record<Measurand, string>> = {
  ph: 'L’acidité de l’eau. Elle décide combien du chlore libre désinfecte, ce que l’eau dissout et dépose, et ce que ressentent les yeux.',
  orp: 'La force oxydante de l’eau, par rapport à cette électrode de référence. Elle suit l’acide hypochloreux au niveau propre à ce bassin\u202f; ce n’est pas un mg/L, et aucun autre bassin ne s’y compare.',
  temperature: 'De l’eau de la chambre de mesure ou du bassin. Elle déplace tout équilibre et ce que supportent les baigneurs.',
  free_chlorine: 'Acide hypochloreux et hypochlorite ensemble, et ce que retient l’acide cyanurique, en Cl₂. Seule la part hypochloreuse désinfecte vite.',
  total_chlorine: 'Chlore libre et combiné ensemble, en Cl₂.',
  combined_chlorine: 'Chlore lié à ce qu’apportent les baigneurs. Il désinfecte peu, et une partie pique les yeux et sent.',
  bromine: 'Tout le brome qui désinfecte, en Br₂.',
  total_alkalinity: 'Ce qui tient le pH contre l’acide, en CaCO₃. L’acide cyanurique s’y ajoute et en est déduit là où l’équilibre est calculé.',
  calcium_hardness: 'Le calcium, en CaCO₃\u202f: ce qui peut se déposer, et ce qu’une eau qui en manque prend aux joints.',
  cyanuric_acid: 'Protège le chlore du soleil, et en retient la plus grande part de désinfecter.',
  dissolved_solids: 'Tout ce qui est dissous, par conductivité ou pesée.',
  conductivity: 'La conduction de l’eau\u202f; elle croît avec ce qui est dissous.',
  sample_flow: 'Si de l’eau passe devant les sondes. Sans elle, elles parlent d’eau stagnante.',
};

const sources: Record<IndexKey, string> = {
  speciated: 'Constantes de la base ouverte de USGS PHREEQC 3.8.9 (phreeqc.dat), publiées\u202f; comparé à 200 eaux calculées avec.',
  handbook: '10 CRR-NY 6-1.30 avec son exemple calculé et sa plage de −0,5 à +0,5, publié\u202f; règle des bains à remous du Montana, table 7, pour les constantes 12,1 et 12,2, publiée.',
  closed_form: 'P. Roberge, corrosion-doctors.org, publié avec des réponses calculées.',
  ionic_strength: 'À la manière de Standard Methods 2330 B, de mémoire\u202f; pK2 et pKs comme dans les bases de l’USGS.',
  precipitation: '35 Ill. Adm. Code 604.900, publié\u202f; calculé avec les constantes de phreeqc.dat.',
  saturation_ph: 'Constantes de phreeqc.dat (USGS), publiées.',
  ryznar: 'De mémoire. Montré, sans effet.', puckorius: 'De mémoire. Montré, sans effet.', larson_skold: 'De mémoire. Montré, sans effet.',
};

export const know: typeof shape = {
  ask: (of: string) => `D’où vient ceci\u202f? ${of}`, title: 'D’où vient ceci\u202f?',
  parts: { from: 'Provenance', age: 'Âge', sure: 'Certitude', means: 'Signification', source: 'Source' },
  means,
  probe: {
    from: (name: string, origin: string) => `Lu par «\u202f${name}\u202f», ${origin}.`, asReceived: 'Montré tel que reçu.', common: 'Dans le retour commun du circuit.',
    corrected: (kind: string, at: string, by: string) => `Corrigé (${inText(kind)}) depuis ${at}, par ${by}.`,
    measured: (at: string) => `Mesuré ${at},`, every: (s: number) => `Une mesure est attendue toutes les ${s}\u00a0s.`, silent: 'Elle est muette depuis plus longtemps qu’elle ne devrait.', notGood: 'Cette mesure n’est pas bonne\u202f: elle est montrée et non jugée.',
    believed: (v: string, n: number) => `L’eau est tenue pour être à ${v} (k = 2) d’après ${n > 1 ? `${n} analyses` : `${n} analyse`}, la dernière`, unjudged: 'Aucune analyse ne lui a encore été comparée\u202f: personne ne connaît son écart.',
    source: 'Statut selon NAMUR NE 107 (publié, de seconde main). Biais et incertitude tirés des analyses\u202f; incertitudes composées selon le GUM (JCGM 100).',
  },
  basis: { probe: 'par la sonde', corrected: 'par la sonde, corrigé', test: 'par analyse' },
  test: {
    from: (method: string) => `Analysé à la main, ${method}.`, bound: 'Au-delà de la fin de la méthode\u202f: une borne, pas un nombre.', sampled: (at: string) => `Prélevé ${at},`,
    u: (u: string) => `± ${u} (k = 2), pour cette méthode en mains habituelles.`, noU: 'Personne ne sait de combien il peut s’écarter.', suspect: 'Douteux\u202f: isolé face au reste, ou peu vraisemblable en lui-même. Refaire l’analyse.',
    source: 'Incertitude de la méthode\u202f: usage courant (docs/sources.md). Un réactif vieux ou une cuve mouillée s’y ajoutent.',
    combined: 'Chlore total moins chlore libre d’un même échantillon.', combinedU: 'Les doutes des deux analyses s’y ajoutent, si bien qu’une petite valeur ne se distingue pas de zéro.', combinedSource: 'Par définition\u202f; incertitudes composées selon le GUM (JCGM 100).',
  },
  balance: {
    from: 'Calculé à partir de', nothing: 'Rien n’a encore été analysé pour le calculer.', oldest: 'Le plus ancien est de', k2: 'Élargie, k = 2.', notActed: 'Montré, sans effet.', sources,
    share: 'Calculé à partir de', shareU: 'Elle bouge avec le pH\u202f: un dixième de pH en fait quelques points.', shareMeans: 'La part du chlore libre qui est de l’acide hypochloreux, lequel désinfecte vite. Elle baisse quand le pH monte, et bien plus avec de l’acide cyanurique.',
    shareSource: 'pKa de l’acide hypochloreux selon Morris (1966), de mémoire\u202f; concorde avec 7,54 à 25\u00a0°C d’O’Brien, Morris et Butler (1974) tel que listé par l’US EPA, publié.',
    cyanurateSource: 'Chlore et cyanurate selon O’Brien, Morris et Butler (1974) tel que listé par l’US EPA, EPA/600/S-17/165, à 25\u00a0°C, publié.',
  },
  trust: {
    from: 'Ce que disent ensemble les sondes, leurs signaux et les analyses de ce bassin, pesé selon la fréquence de leurs erreurs.', sure: 'Les chances sont à côté de la réponse. Le doute ne rassure jamais\u202f: ce qui est dangereux le reste jusqu’à ce qu’une répétition le lève.',
    means: 'Un conseil, jamais un ordre\u202f: qui est au bord du bassin décide. Règles locales et consignes de l’installation passent d’abord.', source: 'Règle de Bayes sur les explications\u202f; le poids de chaque indice est une proposition de ce programme, vérifiée sur des installations simulées (docs/decisions/0012).',
  },
  dose: {
    from: 'Les dernières analyses, le volume du fichier de l’installation, et le titre du produit selon son étiquette et son âge.', sure: (percent: string) => `± ${percent}\u00a0% de la quantité, par volume, titre et analyses ensemble. Une analyse de contrôle dit le résultat.`,
    means: 'Un conseil, jamais un ordre\u202f: l’étiquette, la fiche de données de sécurité et les consignes de l’installation passent d’abord.', source: 'Bilan de matière sans échange avec l’air, constantes d’équilibre de phreeqc.dat (USGS, publiées)\u202f; étapes sûres et attentes sont d’usage courant (docs/doses.md).',
  },
  plan: {
    from: 'Les dernières analyses, les limites et souhaits du fichier de l’installation, les produits disponibles avec leur titre, et le volume.', sure: 'Chaque étape dit de combien elle peut s’écarter. Après chacune, l’eau est analysée\u202f: ce qui en sort passe avant ce qui a été calculé.',
    means: 'Une proposition, jamais un ordre\u202f: le chemin le moins cher ou le plus court vers toutes les plages, par étapes sûres. Étiquettes et consignes de l’installation passent d’abord.', source: 'Équilibre par les constantes de phreeqc.dat (USGS, publiées), chemin par programmes linéaires (docs/decisions/0008)\u202f; étapes sûres et attentes sont d’usage courant.',
  },
};
