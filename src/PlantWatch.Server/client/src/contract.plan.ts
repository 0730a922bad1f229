// The shapes of the server's Contracts.DosingPlan.cs.

import type { Said } from './contract.words';
import type { BalanceInput } from './contract.balance';
import type { DoseFigures, DoseProductView } from './contract.dose';
import type { Amount } from './contract.units';
import type { WhatIfWater } from './contract.whatIf';

export type PlannedFigure = 'ph' | 'total_alkalinity' | 'calcium_hardness' | 'free_chlorine' | 'cyanuric_acid' | 'dissolved_solids' | 'saturation_index';
export type BandStanding = 'unknown' | 'not_tested' | 'inside' | 'within_uncertainty' | 'below' | 'above';
export type PlanOutcome = 'unknown' | 'nothing_to_do' | 'planned' | 'planned_after_dilution' | 'planned_in_part' | 'no_plan' | 'missing' | 'contradictory_bands' | 'impossible_water' | 'no_safe_order' | 'refused';
export interface PlanFigureView {
  figure: PlannedFigure; now: number | null; u: number | null; low: number | null; high: number | null; lowSource: string | null; highSource: string | null; standing: BandStanding; then: number | null;
}
export interface PlanDilutionView { percent: number; drain: Amount; overflow: Amount; drains: number; after: DoseFigures | null }
export interface PlanStepView {
  kind: 'none' | 'dose' | 'aerate' | 'let_chlorine_fall' | 'dilute'; product: DoseProductView | null; mass: Amount | null; litres: Amount | null; part: number; parts: number;
  before: DoseFigures; after: DoseFigures; waitHours: number | null; says: Said[]; equipment: Said[]; precautions: Said[];
}
export interface DosingPlanView {
  at: string; outcome: PlanOutcome; headline: string; refused: Said[]; figures: PlanFigureView[]; inputs: BalanceInput[]; volume: Amount; dilution: PlanDilutionView | null; steps: PlanStepView[];
  cost: number | null; mass: Amount | null; says: Said[]; leftOut: { name: string; because: Said[] }[]; always: Said[];
}
export interface DosingPlanRequest { water: WhatIfWater | null; fill: WhatIfWater | null; bathersOut: boolean | null; wish: 'fewer_goes' | 'least_cost' }
