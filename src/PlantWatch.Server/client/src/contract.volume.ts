import type { Iso, Measurand, Said } from './contract.words';
import type { Amount } from './contract.units';

// The volume that doses tell of, as the server's Contracts.Volume.cs writes it.
export type VolumeWord = 'unknown' | 'too_few' | 'agrees' | 'more' | 'less';
export interface VolumeSignView { at: Iso; product: string; measurand: Measurand; volume: Amount | null; weight: number; apart: boolean }
export interface VolumeView { word: VolumeWord; stated: Amount; effective: Amount | null; low: Amount | null; high: Amount | null; signs: VolumeSignView[]; says: Said[] }
