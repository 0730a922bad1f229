import type { CalibrationView, JudgementView, OfferedCalibration, ProbeView } from './contract';
import type { ProbeInfo } from './contract.plant';
import type { Iso, Said, Standing, WithU } from './contract.words';

// A probe with its past, as the server's Contracts.Probe.cs writes it.
export type Believe = 'neither' | 'probe' | 'tests' | 'either';
export type NextStep =
  | 'nothing' | 'test' | 'repeat' | 'restore_signal' | 'restore_flow' | 'look' | 'clean' | 'test_again' | 'calibrate' | 'adjust_panel' | 'decide' | 'replace'
  | 'other_reagent' | 'wait';
export interface AdvisedStepView { kind: NextStep; text: string }
export interface ProbeAnswerView { whom: Believe; sentence: Said; steps: AdvisedStepView[] }
/** The bias after a check, or to come. */
export interface BiasPoint { checkId: string; at: Iso; value: number; u: number; doubted: boolean }
export interface BiasAheadView { points: BiasPoint[]; drift: WithU | null; earliest: Iso | null; likely: Iso | null; latest: Iso | null; why: Said }
export interface TrustLimits { maintenanceAt: number; outAt: number; learns: boolean; checksNeeded: number; daysNeeded: number }
export interface LearnedView {
  checks: number; needed: number; days: number; daysNeeded: number; since: Iso | null; at: number | null; level: WithU | null; slope: WithU | null;
}
export interface AgreementView { count: number; bias: number; low: number; high: number }
export interface SignalView {
  standing: Standing; reasons: Said[]; response: WithU | null; wanders: number | null; spikes: number; sameSince: Iso | null; leaptAt: Iso | null; leaptBy: number | null;
  noFlowAt: Iso | null; lagSeconds: number;
}
export interface ProbeHistory {
  info: ProbeInfo; now: ProbeView; answer: ProbeAnswerView;
  /** Newest first; `older` is where the next page begins. */
  judgements: JudgementView[]; older: Iso | null;
  calibrations: CalibrationView[]; offer: OfferedCalibration | null;
  /** Why there is an offer, or why there is none. */
  advice: Said[];
  bias: BiasPoint[]; ahead: BiasAheadView | null; limits: TrustLimits | null; learned: LearnedView | null; agreement: AgreementView | null; signal: SignalView;
  slope: WithU | null; testOff: WithU | null; doubted: string[]; takenIn: string[]; flowSwitchId: string | null;
}
export interface JudgementPage { judgements: JudgementView[]; older: Iso | null }
