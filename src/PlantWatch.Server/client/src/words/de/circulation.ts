// Wie das Wasser umläuft, und was Füllwasser bewirkt.
import type { FilterRateKind } from '../../contract.circulation';
import type { circulation as shape } from '../en/circulation';

export const circulation: typeof shape = {
  title: 'Umwälzung und Füllwasser',
  volume: 'Wasser des Kreislaufs', turnover: 'Umwälzzeit', hours: 'h', flow: 'Nötiger Volumenstrom für das Beckenwasser', rate: 'Filtergeschwindigkeit',
  kinds: { unknown: '', low: 'niedrig', medium: 'mittel', high: 'hoch', too_high: 'schneller, als Sandfilter gefahren werden' } as Record<FilterRateKind, string>,
  retest: 'Nachmessung nach Handzugabe', even: 'Überall gleich nach',
  passed: 'Durch die Aufbereitung gegangen', after: (n: number) => n === 1 ? 'nach 1 Umwälzung' : `nach ${n} Umwälzungen`,
  ask: 'Füllwasser eines Tages', bathers: 'Badegäste', litres: 'Liter je Badegast', backwash: 'Spülstrom, m\u00b3/h', minutes: 'Minuten',
  washes: (days: number) => days === 1 ? 'Spülwasser, 1 Tag' : `Spülwasser, ${days} Tage`, washed: (count: number, part: string) => `${count === 1 ? '1 Spülung' : `${count} Spülungen`}: Füllwasser ersetzte ${part} des Wassers`,
  unstated: (count: number) => `${count === 1 ? 'eine Spülung' : `${count} Spülungen`} ohne Angabe`,
  thinned: (tested: string, left: string, drained: string) => `gemessen ${tested}, durch ${drained} Spülwasser seither nicht unter ${left}; Badegäste und Zugaben heben es wieder`,
  total: 'Füllwasser', replaced: (part: string) => `${part} des Wassers sind bis zum Abend neu; was Füllwasser nicht enthält, sinkt um ebenso viel`,
};
