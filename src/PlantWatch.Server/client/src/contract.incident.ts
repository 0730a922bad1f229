// The shapes of the server's Contracts.Incident.cs.

import type { Iso, Said } from './contract.words';

export type IncidentKind = 'unknown' | 'formed_stool' | 'diarrhoeal_stool' | 'vomit' | 'blood' | 'deck_spill';
export type HoldBasis = 'none' | 'contact_time' | 'minutes' | 'dilute_first';
export type HoldWord = 'refused' | 'not_started' | 'running' | 'paused' | 'test_missing' | 'reached';

export interface KindOfIncident { kind: IncidentKind; name: string; steps: Said[]; authorities: AuthorityTable[]; proposed: string | null; proposedWhy: Said | null }
export interface AuthorityTable { authority: string; name: string; inUse: boolean; rows: HoldRow[] }
export interface LevelView { milligramsPerLitre: number; minutes: number; provenance: Said }
export interface HoldRow {
  basis: HoldBasis; cyanurate: [number, number]; startAt: number; floor: number; required: number; levels: LevelView[]; lowestPh: number | null; highestPh: number;
  lowestCelsius: number; source: string; provenance: Said; superseded: boolean; remarks: Said[];
}
export interface IncidentRemark { id: string; at: Iso; by: string; text: string }
export interface ClosedView { at: Iso; by: string | null; why: string | null; word: HoldWord; share: number; others: PoolHoldView[] }
export interface PoolHoldView { poolId: string; word: HoldWord; share: number }
export interface ClockTest {
  checkId: string; at: Iso; place: string; lowestPoint: boolean; residual: number | null; ph: number | null; celsius: number | null; counts: boolean; gained: number; why: Said[];
}
export interface ClockView {
  word: HoldWord; why: Said[]; row: HoldRow | null; credited: number; required: number; share: number; minutesLeft: number | null; startedAt: Iso | null;
  lastCountedAt: Iso | null; lastResidual: number | null; earliestEnd: Iso | null; nextTestBy: Iso | null; reachedAt: Iso | null; tests: ClockTest[];
}
export interface IncidentView {
  id: string; poolId: string; kind: IncidentKind; kindName: string; authority: string; authorityName: string; happenedAt: Iso; declaredAt: Iso; declaredBy: string;
  note: string | null; clock: ClockView | null; cyanurate: number | null; remarks: IncidentRemark[]; beforeOpening: Said[]; closed: ClosedView | null; plan: Said | null; others: PoolClockView[];
}
export interface PoolClockView { poolId: string; name: string; cyanurate: number | null; clock: ClockView }
