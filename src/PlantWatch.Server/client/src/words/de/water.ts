// Die Seiten über das Wasser eines Beckens: was sie teilen, und das Gleichgewicht.
import type { IndexKey } from '../../contract.balance';
import type { water as shape } from '../en/water';

const indices: Record<IndexKey, { name: string; what: string }> = {
  speciated: { name: 'Sättigungsindex, mit Ionenpaaren', what: 'Jedes Ion und Ionenpaar berechnet, Aktivität nach Temperatur und Salzgehalt. Nach diesem gehen.' },
  handbook: { name: 'Sättigungsindex, Tabellenfaktoren', what: 'Die Faktorentabelle der Handbücher, zum Vergleich mit einem Betriebsblatt.' },
  closed_form: { name: 'Sättigungsindex, Formel', what: 'Eine Formel aus Temperatur, gelösten Stoffen, Calcium und Säurekapazität.' },
  ionic_strength: { name: 'Sättigungsindex, Ionenstärke', what: 'Konstanten und ein Aktivitätskoeffizient, wie in den genormten Laborverfahren.' },
  precipitation: { name: 'Calcitabscheidekapazität', what: 'Über 0: was aus einem Liter noch ausfallen kann. Unter 0: was ein Liter noch lösen kann, etwa aus Fugen. Manche Regelwerke drucken sie mit umgekehrtem Vorzeichen.' },
  saturation_ph: { name: 'pH-Wert der Sättigung', what: 'Bei diesem pH-Wert würden dasselbe Calcium und dieselbe Säurekapazität weder lösen noch abscheiden.' },
  ryznar: { name: 'Ryznar-Index', what: 'Für Kühlwasser gemacht; etwa 6 bis 7 ist dort nahe am Gleichgewicht (aus dem Gedächtnis).' },
  puckorius: { name: 'Puckorius-Index', what: 'Für Kühltürme gemacht, mit einem pH-Wert aus der Säurekapazität statt dem gemessenen (aus dem Gedächtnis).' },
  larson_skold: { name: 'Larson\u2013Skold-Verhältnis', what: 'Für unlegierten Stahl gemacht: Chlorid zu Hydrogencarbonat, wobei Chlorid die gelösten Stoffe auffüllt; über 1,2 ist dort korrosiv (aus dem Gedächtnis). Salzbecken liegen immer darüber.' },
};

export const water: typeof shape = {
  nav: {
    label: 'Wasser dieses Beckens',
    pages: { pool: 'Becken', balance: 'Index', 'what-if': 'Was wäre', dose: 'Zugabe', plan: 'Plan', incident: 'Vorfall' },
  },
  titles: { pool: 'Becken', balance: 'Wassergleichgewicht', 'what-if': 'Was wäre, wenn', dose: 'Zugabe', plan: 'Dosierplan', incident: 'Vorfall' },
  notYet: 'Diese Seite ist noch leer.',
  indices,
  verdict: 'Sättigungsindex', none: 'Kein Index',
  meaning: {
    corrosive: 'Das Wasser löst Calciumcarbonat: Fugen, Putz und Beton leiden.',
    balanced: 'Das Wasser löst und scheidet nicht nennenswert ab.',
    scale_forming: 'Das Wasser scheidet Calciumcarbonat ab: Filter, Wärmetauscher und Klarheit leiden.',
  } as Record<string, string>,
  scale: { dissolves: 'löst', deposits: 'scheidet ab', label: (v: string, u: string) => `Index ${v}, plus oder minus ${u}, auf einer Skala von \u22121,5 bis +1,5; im Gleichgewicht von \u22120,5 bis +0,5` },
  plusMinus: (u: string) => `\u00b1\u00a0${u}`,
  noU: '\u00b1 nicht bekannt', chlorineFrom: (origin: string) => `Freies Chlor: ${origin}, `,
  both: (claim: string, u: string) => `\u00b1 ${claim} durch das Verfahren, \u00b1 ${u} durch die Eingaben`, claimOnly: (claim: string) => `\u00b1 ${claim} durch das Verfahren`, inputsOnly: (u: string) => `\u00b1 ${u} durch die Eingaben`,
  go: 'Indizes', noIndices: 'Noch lässt sich keiner angeben: siehe, was fehlt.', shown: 'Für andere Wässer gemacht: gezeigt, nicht danach gehandelt',
  inputs: 'Berechnet aus', input: 'Eingabe', value: 'Wert', origin: 'Woher', age: 'Alter', live: 'Sonde', test: 'Hand', doubted: 'zweifelhaft', onDoubtedPh: 'beruhen auf einem zweifelhaften pH-Wert', enter: 'Prüfung eintragen', tryIt: 'Änderung ausprobieren', more: 'Alle Indizes und Eingaben',
  chlorine: 'Desinfizierendes Chlor', share: 'vom freien Chlor', hocl: 'Hypochlorige Säure', withCyanurate: (v: string) => `Mit ${v}\u00a0mg/L Cyanursäure`, without: 'Wie es ohne Cyanursäure wäre', asItIs: 'Wie das Wasser ist',
  cadence: 'Wird neu berechnet, wenn sich Sonden bewegen, alle paar Sekunden.',
};
