// How the water goes round, and what fresh water does to it.
import type { FilterRateKind } from '../contract.circulation';

export const circulation = {
  title: 'Circulation and fresh water',
  volume: 'Water of the circuit', turnover: 'Turnover', hours: 'h', flow: 'Flow it asks for', rate: 'Through the filters',
  kinds: { unknown: '', low: 'low rate', medium: 'medium rate', high: 'high rate', too_high: 'faster than sand filters are run' } as Record<FilterRateKind, string>,
  retest: 'Retest after a hand dose', even: 'Even all through after',
  passed: 'Been through the plant room', after: (n: number) => n === 1 ? 'after 1 turnover' : `after ${n} turnovers`,
  ask: 'Fresh water of a day', bathers: 'Bathers', litres: 'Litres for each', backwash: 'Backwash flow, m\u00b3/h', minutes: 'Minutes',
  total: 'Fresh water', replaced: (part: string) => `${part} of the water is new by evening; what fresh water does not hold falls by as much`,
};
