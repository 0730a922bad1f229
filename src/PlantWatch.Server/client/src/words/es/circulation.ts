// How the water goes round, and what fresh water does to it.
import type { FilterRateKind } from '../../contract.circulation';
import type { circulation as shape } from '../en/circulation';

export const circulation: typeof shape = {
  title: 'Recirculación y agua nueva',
  volume: 'Agua del circuito', turnover: 'Tiempo de recirculación', hours: 'h', flow: 'Caudal que pide, para el agua de los vasos', rate: 'A través de los filtros',
  kinds: { unknown: '', low: 'velocidad baja', medium: 'velocidad media', high: 'velocidad alta', too_high: 'más rápido de lo que trabajan los filtros de arena' } as Record<FilterRateKind, string>,
  retest: 'Comprobación tras una dosis manual', even: 'Uniforme en todo el vaso tras',
  passed: 'Ha pasado por la sala técnica', after: (n: number) => (n === 1 ? 'tras 1 recirculación' : `tras ${n} recirculaciones`),
  ask: 'Agua nueva de un día', bathers: 'Bañistas', litres: 'Litros por bañista', backwash: 'Caudal de lavado, m\u00b3/h', minutes: 'Minutos',
  washes: (days: number) => `Agua de los lavados, ${days} días`, washed: (count: number, part: string) => `${count === 1 ? '1 lavado' : `${count} lavados`}: el agua nueva sustituyó ${part} del agua`,
  unstated: (count: number) => `${count === 1 ? 'un lavado' : `${count} lavados`} sin cifra`,
  thinned: (tested: string, left: string, drained: string) => `analizado ${tested}; desde entonces, con ${drained} de agua de lavado, no menos de ${left}; bañistas y dosis lo vuelven a subir`,
  total: 'Agua nueva', replaced: (part: string) => `${part} del agua es nueva al final del día; lo que el agua nueva no lleva baja otro tanto`,
};
