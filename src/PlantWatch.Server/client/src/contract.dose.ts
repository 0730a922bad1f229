// The shapes of the server's Contracts.Dose.cs.

import type { Measurand, Said } from './contract.words';
import type { Amount } from './contract.units';

export interface DoseTargetView { measurand: Measurand; direction: 1 | -1; now: number | null; testedAt: string | null; low: number | null; high: number | null }
export interface DoseProductView {
  id: string; name: string; kind: string; strengthPercent: number; asChlorine: boolean; ageDays: number | null; density: number | null; byPump: boolean;
  says: Said[]; unfit: Said[]; targets: DoseTargetView[];
}
export interface DoseFigures { ph: number; saturation: number | null; freeChlorine: number; hypochlorousAcid: number | null; alkalinity: number; calcium: number; cyanurate: number; solids: number }
export interface DoseView {
  total: Amount; totalVolume: Amount | null; first: Amount; firstVolume: Amount | null; whole: boolean; uncertaintyPercent: number; cost: number | null; because: Said[];
  before: DoseFigures | null; atOnce: DoseFigures | null; spent: DoseFigures | null; sideEffects: Said[];
}
export interface DoseAdviceView {
  at: string; product: DoseProductView; target: Measurand; from: number | null; value: number; refused: Said[]; volume: Amount; firstVolume: Amount; dose: DoseView | null;
  says: Said[]; how: Said[]; equipment: Said[]; precautions: Said[]; retestHours: number;
}
export interface DoseAdviceRequest { productId: string; target: Measurand; value: number; bathersOut: boolean | null; closed: boolean }

export interface GivenDoseRequest {
  poolId: string; productId: string; kilograms: number | null; litres: number | null; givenAt: string; by: string; note: string | null; corrects: string | null; correctionReason: string | null;
}
export type ResponseWord = 'unknown' | 'as_predicted' | 'less' | 'more' | 'other_way' | 'not_comparable';
export interface FigureResponseView { measurand: Measurand; predicted: number; measured: number; u: number; word: ResponseWord; text: string }
export interface DoseResponseView { checkId: string; sampledAt: string; figures: FigureResponseView[] }
export interface PredictedChange { measurand: Measurand; before: number; change: number; changeUncertainty: number }
export interface GivenDose {
  id: string; poolId: string; productId: string; product: string; kilograms: number; givenAt: string; mixedAt: string; by: string; note: string | null;
  predicted: PredictedChange[]; corrects: string | null; correctionReason: string | null;
}
export interface GivenDoseView { dose: GivenDose; amount: Amount; arrivedAt: string; corrected: boolean; responses: DoseResponseView[] }
export interface DosesView { products: DoseProductView[]; given: GivenDoseView[]; bathers: number | null; hold: DoseHoldView | null }
export interface DoseHoldView { incidentId: string; poolId: string; startAt: number | null; highest: number | null; why: Said | null; mayBatheIn: string[] }
