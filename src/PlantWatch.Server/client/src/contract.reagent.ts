import type { Iso, Measurand, Said } from './contract';

// Reagents, as the server's Contracts.Reagent.cs writes them.
export type ReagentWord = 'not_noted' | 'in_date' | 'order' | 'out_of_date';
export type ReagentUse = 'any' | 'photometer' | 'comparator' | 'tablet_count' | 'calibration';
export interface ReagentView {
  id: string; name: string; tests: Measurand[]; method: ReagentUse; daysAfterOpening: number | null; word: ReagentWord;
  lot: string | null; lastDay: string | null; openedAt: Iso | null; notedBy: string | null; goodUntil: Iso | null; why: Said | null;
}
export interface LotRequest { id: string; lot: string; lastDay: string; openedAt: Iso; by: string }
