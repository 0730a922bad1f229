import type { ProbeInfo } from './contract.plant';
import type { CalibrationKind, CalibrationStatus, Iso, Said, WithU } from './contract.words';

// The bench, as the server's Contracts.Bench.cs writes it.
export type PhBuffer = 'unknown' | 'phthalate' | 'phosphate' | 'borax' | 'carbonate' | 'technical4' | 'technical7' | 'technical10';
export type BufferFamily = 'unknown' | 'reference' | 'technical';
export type Quinhydrone = 'unknown' | 'phthalate' | 'phosphate';
export type ProbeWork = 'cleaned' | 'electrode_replaced' | 'polished' | 'membrane_replaced' | 'electrolyte_refilled';
export type CalibrationBasis = 'unknown' | 'checks' | 'buffers' | 'check_solution';
export type BenchVerdict = 'unknown' | 'within' | 'outside';
export type PointSource = 'typed' | 'settled';

export interface Settled { isSettled: boolean; mean: number | null; span: number | null; mostSpan: number; readings: number; seconds: number; secondsNeeded: number }
export interface Row { celsius: number; value: number }
export interface BufferView { buffer: PhBuffer; family: BufferFamily; nominal: number; table: Row[] }
export interface CheckSolutionView { quinhydrone: Quinhydrone; table: Row[] }
export interface CareView { everyDays: number; slopeLow: number; slopeHigh: number; offsetMillivolts: number; orpMillivolts: number; secondPerson: boolean }
export interface WorkView { id: string; by: string; since: Iso; until: Iso; open: boolean }
export interface DriftSpan { from: Iso; to: Iso; left: number; found: number; perDay: number }
export interface OutlookView { why: Said; earliest: Iso | null; likely: Iso | null; latest: Iso | null }
export interface BenchView {
  probe: ProbeInfo; limits: CareView; dueAt: Iso | null; overdue: boolean; work: WorkView | null; heldSlope: number; heldOffset: number; settled: Settled | null; lastAt: Iso | null;
  buffers: BufferView[]; checkSolutions: CheckSolutionView[]; spans: DriftSpan[]; driftPerDay: WithU | null; bySlope: OutlookView | null;
}
export interface PointRequest {
  buffer: PhBuffer; quinhydrone: Quinhydrone; label: number | null; celsius: number; reading: number; inMillivolts: boolean; source: PointSource; at: Iso | null; lot: string | null; expires: string | null;
}
export interface SheetRequest {
  by: string; note: string | null; work: ProbeWork[]; startedAt: Iso | null; endedAt: Iso | null; asFound: PointRequest[]; points: PointRequest[]; asLeft: PointRequest[];
}
export interface PointView extends PointRequest { known: number | null }
export interface SheetView {
  startedAt: Iso | null; endedAt: Iso | null; asFound: PointView[]; points: PointView[]; asLeft: PointView[]; limits: CareView; heldSlope: number; heldOffset: number;
  slopePercent: number | null; offsetMillivolts: number | null; foundError: number | null; leftError: number | null; verdict: BenchVerdict; why: Said[];
}
export interface SheetResult { kind: CalibrationKind; status: CalibrationStatus; slope: number; offset: number; sheet: SheetView }
