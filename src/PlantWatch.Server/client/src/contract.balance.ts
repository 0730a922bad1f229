// The shapes of the server's Api/Contracts.Balance.cs.
import type { Iso, Measurand, Said } from './contract';

export interface BalanceView { index: number | null; claim: number; word: string | null; inputs: BalanceInput[]; missing: Said[] }
export interface BalanceInput {
  measurand: Measurand; value: number; at: Iso; live: boolean;
  /** Expanded uncertainty; null when nobody knows. */
  u: number | null;
  suspect: boolean; probeId: string | null;
}
