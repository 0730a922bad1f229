// The shapes of the server's Contracts.WhatIf.cs.
import type { Iso, Said } from './contract.words';
import type { BalanceInput } from './contract.balance';
import type { Amount } from './contract.units';

export interface WhatIfWater {
  ph: number | null; temperature: number | null; totalAlkalinity: number | null; calciumHardness: number | null; dissolvedSolids: number | null;
  cyanuricAcid: number | null; freeChlorine: number | null;
}
export interface WhatIfDose { product: string; kilograms: number }
export interface WhatIfRequest { water: WhatIfWater | null; doses: WhatIfDose[]; volumeM3: number | null; curve: string | null; chlorineSpent: boolean }
export interface WaterFigures {
  ph: number; totalAlkalinity: number; calciumHardness: number | null; dissolvedSolids: number | null; cyanurate: number; freeChlorine: number | null;
  saturationIndex: number | null; hypochlorousAcid: number | null; hypochlorousShare: number | null;
}
export interface FiguresView { figures: WaterFigures; word: string | null }
export interface WhatIfAmount { product: string; mass: Amount; volume: Amount | null }
type Column = (number | null)[];
/** A curve by columns of one length; empty when there is none. */
export interface CurveView { at: number[]; ph: number[]; saturation: Column; hocl: Column; share: Column }
export interface WhatIfProduct { id: string; name: string; kind: string; atHand: boolean; strength: string; kilogramsPerLitre: number | null; scaleKilograms: number }
export interface WhatIfView {
  at: Iso; inputs: BalanceInput[]; now: FiguresView | null; water: FiguresView | null; after: FiguresView | null; againstPh: CurveView; nowAgainstPh: CurveView;
  againstDose: CurveView; doses: WhatIfAmount[]; volumeM3: number; volume: Amount; products: WhatIfProduct[]; remarks: Said[];
}
