import type { Iso } from './contract';
import type { FilterRateKind } from './contract.circulation';
import type { Said } from './contract.words';

// Circulation and filters, as the server's Contracts.Filter.cs writes them.
export interface BackwashView { id: string; by: string; since: Iso; until: Iso; quietUntil: Iso }
export interface FilterView {
  id: string; name: string; kilopascals: number | null; readAt: Iso | null; cleanKilopascals: number | null; dueRiseKilopascals: number;
  washedAt: Iso | null; washedBy: string | null; everyDays: number | null; due: boolean; backwash: BackwashView | null; againNeedsWhy: boolean;
  kind: 'media' | 'strainer'; usualWashM3: number | null; washM3: number | null;
}
export interface FiltersView {
  circuitId: string; name: string; flowCubicMetresPerHour: number | null; flowAt: Iso | null; lowCubicMetresPerHour: number | null; filters: FilterView[];
  turnover: TurnoverView; says: Said[];
}
export interface TurnoverView {
  meanCubicMetresPerHour: number | null; hours: number | null; designCubicMetresPerHour: number | null; designHours: number | null;
  fallsShort: boolean; rate: number | null; rateKind: FilterRateKind;
}
export interface WashRequest { id: string; by: string; circuit: string; cubicMetres?: number; why?: string | null }
