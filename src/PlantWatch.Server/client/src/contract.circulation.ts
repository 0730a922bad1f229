import type { Iso, Measurand, Said } from './contract.words';
import type { Amount } from './contract.units';

// How the water goes round, as the server's Contracts.Circulation.cs writes it.
export type FilterRateKind = 'unknown' | 'low' | 'medium' | 'high' | 'too_high';
export interface CirculationView {
  volume: Amount; turnoverHours: number | null; flow: Amount | null; filterRate: Amount | null; filterKind: FilterRateKind;
  retestHours: number | null; evenHours: number | null; passed: { turnovers: number; part: number }[];
  fresh: { forBathers: Amount; byBackwash: Amount; total: Amount; partReplaced: number } | null; washes: WashWaterView | null; sayings: Said[];
}
export interface WashWaterView {
  days: number; count: number; unstated: number; total: Amount; partReplaced: number;
  diluted: { measurand: Measurand; tested: number; testedAt: Iso; drained: Amount; notBelow: number }[];
}
