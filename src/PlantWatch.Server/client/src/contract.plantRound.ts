// Rounds through the plant room, as the server's Contracts.PlantRound.cs writes them.
import type { Iso, Said } from './contract';

export type RoundItem =
  | 'other' | 'filter_inlet' | 'filter_outlet' | 'circulation' | 'strainer' | 'balance_tank' | 'make_up_meter' | 'sample_flow' | 'ultraviolet_intensity' | 'coagulant' | 'eyewash' | 'gas_alarm';
export type RoundReadingKind = 'works' | 'pressure' | 'flow' | 'small_flow' | 'percent' | 'meter' | 'amount';
export type RoundWord = 'due' | 'walked' | 'overdue';
export interface RoundReading { itemId: string; value: number | null; works: boolean | null; remark: string | null }
export interface PlantRoundRequest { circuit: string; walkedAt: Iso; by: string; readings: RoundReading[]; remark: string | null }
export interface RoundLineView { itemId: string; name: string; out: boolean; says: Said[] }
export interface PlantRoundAnswer { id: string; circuit: string; walkedAt: Iso; by: string; lines: RoundLineView[] }
export interface RoundItemView {
  id: string; what: RoundItem; name: string; kind: RoundReadingKind; unit: string; low: number | null; high: number | null;
  lastValue: number | null; lastWorks: boolean | null; lastAt: Iso | null; wanted: boolean;
}
export interface PlantRoundView { circuit: string; name: string; word: RoundWord; dueAt: Iso; walkedAt: Iso | null; by: string | null; items: RoundItemView[] }
