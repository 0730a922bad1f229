import type { Iso } from './contract.words';

// Limit packs, row by row, as the server's Contracts.Limits.cs writes them.
export type Holds = 'yes' | 'unknown' | 'no';
export type RowGrade = 'operating' | 'closure' | 'guide';
export type RowProvenance = 'from_memory' | 'secondary' | 'published';
export type LimitsWord = 'none' | 'unconfirmed' | 'own_only' | 'in_force';
export interface PackInfo { id: string; authority: string; edition: string; superseded: boolean; rows: number; fromMemory: number; sentences: number }
export interface ConfirmationView { by: string; at: Iso; document: string; applies: boolean }
export interface PackRowView {
  id: string; digest: string; quantity: string; name: string; unit: string; grade: RowGrade; low: number | null; high: number | null; raisesLowBy: number | null;
  says: string; toJudge: string | null; source: string; provenance: RowProvenance; certainty: string | null; pools: { pool: string; holds: Holds; measured: boolean }[];
  confirmed: ConfirmationView | null; changedSince: boolean;
}
/** An end with an empty row is the plant's own. */
export interface BoundView { quantity: string; name: string; unit: string; grade: RowGrade; low: number | null; lowFrom: string; high: number | null; highFrom: string; byBalance: boolean }
/** A row in mV that is watched against the electrode of the pool's probe; spread is what an unnamed filling leaves open. */
export interface TurnedRow { rowId: string; against: string; own: string; low: number | null; high: number | null; spread: number }
export interface PoolBoundsView { pool: string; word: LimitsWord; bounds: BoundView[]; unconfirmed: string[]; undecided: { row: string; needs: string }[]; notMeasured: string[]; turned: TurnedRow[] }
/** A stop that always holds, beside what it is where nobody edits it. */
export interface StopView { quantity: string; name: string; unit: string; low: number | null; high: number; usualLow: number | null; usualHigh: number; why: string | null; by: string | null }
export interface CircuitLimitsView { circuit: string; pack: PackInfo | null; rows: PackRowView[]; pools: PoolBoundsView[]; mayConfirm: string[]; stops: StopView[] }
