// Wem zu glauben ist, der Sonde oder der Handmessung.
import type { StoryPart, StoryWeight } from '../../contract.trust';
import type { trust as shape } from '../en/trust';

const tenths = (n: number) => n.toFixed(1).replace('.', ',');

export const trust: typeof shape = {
  title: 'Wem zu glauben ist',
  byCheck: 'Nach der Prüfung von', noCheck: 'Noch keine Prüfung',
  weight: { none: '', leans: 'Es neigt dahin', likely: 'Wahrscheinlich', strong: 'So gut wie sicher' } as Record<StoryWeight, string>,
  odds: (weight: string, odds: number) => `${weight}: etwa ${odds >= 1000 ? 'tausend' : odds >= 10 ? Math.round(odds) : tenths(odds)} zu 1 gegen die nächste Erklärung`,
  next: 'Was als Nächstes zu tun ist', minutes: (n: number) => `etwa ${n}\u00a0min`,
  advice: 'Ratschläge, der nützlichste zuerst. Stopps und Grenzwerte gelten derweil weiter.',
  whatSpeaks: 'Alle Anzeichen, und wer irren kann', whoMayBeWrong: 'Wer irren kann',
  part: {
    none: 'niemand', ph_test: 'pH-Handmessung', ph_probe: 'pH-Sonde', chlorine_test: 'Chlor-Handmessung', chlorine_probe: 'Chlorsonde', orp_probe: 'Redoxsonde',
  } as Record<StoryPart, string>,
  speaks: (part: string, ratio: number) => ratio > 1.15 ? `gegen die ${part}, ${times(ratio)}` : ratio < 0.87 ? `für die ${part}, ${times(1 / ratio)}` : '',
  between: 'Bis es geklärt ist, kann das Wasser überall liegen zwischen',
  worse: 'Nach dem schlechteren Ende handeln.',
  testBy: (clock: string) => `Von Hand messen bis ${clock}`, testLate: (clock: string) => `Eine Handmessung war bis ${clock} verlangt`,
  panel: 'Regler', received: 'Empfangen', corrected: 'Korrigiert', test: 'Hand', believed: 'Bestwert', expected: 'Erwartet',
  panelDiffers: 'Regleranzeige und empfangene Zahl sind verschieden', waiting: 'Anzeichen werden abgewogen', sides: 'Nebeneinander bei der Probenahme',
};

function times(n: number): string {
  return n >= 100 ? '\u00d7\u2009100 und mehr' : `\u00d7\u2009${n >= 10 ? Math.round(n) : tenths(n)}`;
}
