// The shapes of the server's Contracts.PoolState.cs.

import type { Iso, Said } from './contract.words';

export type OperatingState = 'not_stated' | 'open' | 'closed' | 'covered' | 'drained';
export type GateWord = 'not_known' | 'not_passed' | 'passed';
export interface OperationView { state: OperatingState; since: Iso | null; by: string | null; why: string | null; forCause: boolean }
export interface GateLineView { code: string; word: GateWord; why: Said }
export interface GateView { poolId: string; operation: OperationView; passed: boolean; lines: GateLineView[]; signers: string[] | null }
export interface PoolStateChangeView { at: Iso; poolId: string; before: OperatingState; state: OperatingState; by: string | null; why: string | null; forCause: boolean; byIncident: boolean; refilled: boolean }
