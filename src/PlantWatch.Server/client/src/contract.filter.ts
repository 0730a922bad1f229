import type { Iso } from './contract';

// Circulation and filters, as the server's Contracts.Filter.cs writes them.
export interface BackwashView { id: string; by: string; since: Iso; until: Iso }
export interface FilterView {
  id: string; name: string; kilopascals: number | null; readAt: Iso | null; cleanKilopascals: number | null; dueRiseKilopascals: number;
  washedAt: Iso | null; washedBy: string | null; everyDays: number | null; due: boolean; backwash: BackwashView | null;
}
export interface FiltersView {
  circuitId: string; name: string; flowCubicMetresPerHour: number | null; flowAt: Iso | null; lowCubicMetresPerHour: number | null; filters: FilterView[];
}
export interface WashRequest { id: string; by: string; circuit: string }
