import type { Said } from './contract.words';

// What an ORP may say, and its reading against other reference electrodes, as the server's Contracts.Orp.cs writes it.
export type ReferenceElectrode = 'unknown' | 'standard_hydrogen' | 'silver_chloride3_m' | 'silver_chloride3_m5' | 'silver_chloride_saturated' | 'calomel';
export interface OrpAgainst { electrode: ReferenceElectrode; millivolts: number; u: number; fromMemory: boolean }
export interface OrpView {
  temperatureC: number; temperatureIsAssumed: boolean; perPh: number; perDoubling: number; reading: number | null; own: ReferenceElectrode;
  against: OrpAgainst[]; sayings: Said[];
}
