// The plant as its file describes it.

import type { Measurand } from './contract.words';

export type UnitSystem = 'metric' | 'us' | 'imperial';
export interface SiteView { name: string; timeZone: string; units: UnitSystem; circuits: CircuitInfo[]; products: ProductPlan[] }
export interface ProductPlan { id: string; name: string; kind: string; strength: number | null }
export interface CircuitInfo {
  id: string; name: string; balanceTankM3: number | null; turnoverHours: number | null;
  pools: PoolInfo[]; probes: ProbeInfo[]; pumps: PumpInfo[];
}
export interface LimitPlan { measurand: Measurand; low: number | null; high: number | null; source: string; referenceElectrode?: string | null }
/** The ends that a measurand has to lie within, of pack and plant together. */
export interface LimitBand { measurand: Measurand; low: number | null; high: number | null }
export interface CheckDuty { what: Measurand[]; at: string[] }
export interface PoolInfo {
  id: string; name: string; kind: string; setting: string; disinfectant: string; secondary: string[];
  volumeM3: number; limits: LimitPlan[]; duties: CheckDuty[];
}
export interface ProbeInfo {
  id: string; name: string; poolId: string | null; measurand: Measurand; unit: string; decimals: number; origin: 'raw' | 'panel_scaled';
  rangeLow: number; rangeHigh: number; everySeconds: number; referenceElectrode: string | null;
}
export interface PumpInfo {
  id: string; name: string; poolId: string | null; productId: string; productName: string; tankLitres: number | null; tankLowPercent?: number | null;
  stateSeries: string; tankSeries: string | null;
}
