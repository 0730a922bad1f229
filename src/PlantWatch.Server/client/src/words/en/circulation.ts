// How the water goes round, and what fresh water does to it.
import type { FilterRateKind } from '../../contract.circulation';

export const circulation = {
  title: 'Circulation and fresh water',
  volume: 'Water of the circuit', turnover: 'Turnover', hours: 'h', flow: 'Flow it asks for, of the pools\u2019 water', rate: 'Through the filters',
  kinds: { unknown: '', low: 'low rate', medium: 'medium rate', high: 'high rate', too_high: 'faster than sand filters are run' } as Record<FilterRateKind, string>,
  retest: 'Retest after a hand dose', even: 'Even all through after',
  passed: 'Been through the plant room', after: (n: number) => n === 1 ? 'after 1 turnover' : `after ${n} turnovers`,
  ask: 'Fresh water of a day', bathers: 'Bathers', litres: 'Litres for each', backwash: 'Backwash flow, m\u00b3/h', minutes: 'Minutes',
  washes: (days: number) => `Water of the washes, ${days} days`, washed: (count: number, part: string) => `${count === 1 ? '1 wash' : `${count} washes`}: fresh water took the place of ${part} of the water`,
  unstated: (count: number) => `${count === 1 ? 'one wash' : `${count} washes`} without a figure`,
  thinned: (tested: string, left: string, drained: string) => `tested ${tested}, by ${drained} of wash water since not below ${left}; bathers and doses bring it up again`,
  total: 'Fresh water', replaced: (part: string) => `${part} of the water is new by evening; what fresh water does not hold falls by as much`,
};
