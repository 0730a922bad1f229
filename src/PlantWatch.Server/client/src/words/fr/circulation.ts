import type { FilterRateKind } from '../../contract.circulation';
import type { circulation as shape } from '../en/circulation';

// How the water goes round, and what fresh water does to it.

const washes = (n: number) => (n > 1 ? `${n} lavages` : `${n} lavage`);

export const circulation: typeof shape = {
  title: 'Circulation et eau neuve',
  volume: 'Eau du circuit', turnover: 'Durée de recyclage', hours: 'h', flow: 'Débit nécessaire, pour l’eau des bassins', rate: 'À travers les filtres',
  kinds: { unknown: '', low: 'vitesse lente', medium: 'vitesse moyenne', high: 'vitesse rapide', too_high: 'plus vite que l’usage des filtres à sable' } as Record<FilterRateKind, string>,
  retest: 'Analyse de contrôle après une dose manuelle', even: 'Homogène au bout de',
  passed: 'Passée par le local technique', after: (n: number) => (n > 1 ? `après ${n} recyclages` : `après ${n} recyclage`),
  ask: 'Eau neuve du jour', bathers: 'Baigneurs', litres: 'Litres par baigneur', backwash: 'Débit de lavage, m³/h', minutes: 'Minutes',
  washes: (days: number) => `Eau des lavages, ${days}\u00a0${days > 1 ? 'jours' : 'jour'}`, washed: (count: number, part: string) => `${washes(count)}\u202f: l’eau neuve a remplacé ${part} de l’eau`,
  unstated: (count: number) => `${washes(count)} sans volume indiqué`,
  thinned: (tested: string, left: string, drained: string) => `analysé à ${tested}\u202f; avec ${drained} d’eau de lavage depuis, pas moins de ${left}\u202f; baigneurs et doses le font remonter`,
  total: 'Eau neuve', replaced: (part: string) => `${part} de l’eau est neuve le soir\u202f; ce que l’eau neuve ne contient pas baisse d’autant`,
};
