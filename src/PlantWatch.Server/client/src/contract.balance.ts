// The shapes of the server's Contracts.Balance.cs.
import type { Iso, Measurand, Said } from './contract.words';

export interface BalanceView {
  index: number | null; claim: number; word: string | null; inputs: BalanceInput[]; missing: Said[];
  /** Every index, those that are acted on first. */
  indices: IndexView[];
  chlorine: ChlorineView | null;
  /** What has to be said of the water and of its inputs. */
  remarks: Said[];
}
export interface BalanceInput {
  measurand: Measurand; value: number; at: Iso; live: boolean;
  /** Expanded uncertainty; null when nobody knows. */
  u: number | null;
  suspect: boolean; probeId: string | null;
}
export type IndexKey = 'speciated' | 'handbook' | 'closed_form' | 'ionic_strength' | 'precipitation' | 'saturation_ph' | 'ryznar' | 'puckorius' | 'larson_skold';
export interface IndexView {
  key: IndexKey; value: number | null;
  /** What the method may claim, and what the inputs put on top of it (expanded); null where there is no figure for it. */
  claim: number | null; u: number | null;
  word: string | null; acted: boolean; sayings: Said[];
}
/** Hypochlorous acid in mg/L as Cl2 and as a part of free chlorine, with the cyanurate there is and as it would be without. */
export interface ChlorineView { free: number | null; share: number | null; hocl: number | null; u: number | null; shareWithout: number | null; hoclWithout: number | null; cyanurate: number | null; sayings: Said[] }
