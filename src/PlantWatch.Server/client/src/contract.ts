// The shapes of /api/v1 and of the hub /live, as the server's Contracts.cs writes them. Times are ISO 8601 in UTC.

import type { OperationView } from './contract.poolState';
import type { BalanceView } from './contract.balance';
import type { CalibrationBasis, ProbeWork, SheetView, WorkView } from './contract.bench';
import type { IncidentView } from './contract.incident';
import type { JobView } from './contract.jobs';
import type { LimitBand } from './contract.plant';
import type {
  AlarmChange, AlarmState, CalibrationKind, CalibrationStatus, CellLook, Censoring, FieldSaid, Iso, Measurand, PoolWord,
  Priority, PumpActivity, Said, SamplePoint, Standing, TestMethod, Tier, Verdict, WithU
} from './contract.words';

export type * from './contract.plant';
export type * from './contract.words';

export interface CircuitView {
  id: string; version: number; at: Iso; pools: PoolView[]; probes: ProbeView[]; pumps: PumpView[];
  alarms: AlarmView[]; jobs: JobView[]; proposals: CalibrationView[]; ledger: LedgerView;
}
export interface PoolView {
  id: string; state: PoolWord; why: Said[]; manual: ManualView[]; combined: CombinedView | null; balance: BalanceView;
  hoclShare: number | null; due: DueView[]; bottomVisible: boolean | null; bathers: number | null; incidents?: IncidentView[];
  limits?: { word: 'none' | 'unconfirmed' | 'own_only' | 'in_force'; unconfirmed: number; pack: string | null; bands?: LimitBand[] };
  operation?: OperationView;
}
export interface ManualView {
  measurand: Measurand; value: number; u: number; censoring: Censoring; method: TestMethod; sampledAt: Iso; suspect: boolean; checkId: string;
}
/** Null where free stands above total or a bound leaves no number; the remark says which. */
export interface CombinedView { value: number | null; u: number; sampledAt: Iso; remark: Said | null; breakpoint?: Said[] }
export interface DueView { poolId: string; what: Measurand[]; dueAt: Iso; overdue: boolean }
export interface ProbeView {
  id: string; at: Iso | null; raw: number | null; value: number | null; good: boolean; stale: boolean; standing: Standing; reasons: Said[];
  bias: WithU | null; believed: WithU | null; verdict: Verdict; judgedAt: Iso | null; pairs: number; calibration: CalibrationView | null;
  calibrationDueAt?: Iso | null; calibrationOverdue?: boolean; work?: WorkView | null;
}
export interface PumpView {
  id: string; activity: PumpActivity; since: Iso | null; heardAt: Iso | null; tankPercent: number | null; tankAt: Iso | null; stale: boolean;
}
export interface AlarmView {
  id: string; rule: string; subject: string; poolId: string | null; priority: Priority; state: AlarmState; active: boolean; acknowledged: boolean;
  title: string; cause: string; consequence: string; action: string; timeToRespond: string;
  raisedAt: Iso; clearedAt: Iso | null; acknowledgedBy: string | null; acknowledgedAt: Iso | null; comment: string | null;
  shelvedBy: string | null; shelvedUntil: Iso | null;
  shelvedWhy?: string | null; oneShot?: boolean; shelvable?: boolean; latches?: boolean; latchHeld?: boolean; suppressedBy?: string | null;
  outOfServiceBy?: string | null; outOfServiceAt?: Iso | null; outOfServiceWhy?: string | null; outOfServiceUntil?: Iso | null;
  /** Place in the order of raising; id of the alarm this one follows from; how often it spoke again. */
  order?: number; consequenceOf?: string | null; reAlarms?: number;
  /** It speaks up: nobody has seen it, it is not put away, and no cause at least as severe speaks for it. */
  annunciates?: boolean; annunciatedAt?: Iso | null;
  /** It is reset only after somebody recorded that the plant was made safe; what was recorded. */
  mustBeMadeSafe?: boolean; madeSafe?: { by: string; at: Iso; comment: string | null } | null;
  /** What people call the subject; and that a person may take the alarm out of service. */
  subjectName: string; mayLeaveService: boolean;
}
export interface CalibrationView {
  id: string; probeId: string; kind: CalibrationKind; status: CalibrationStatus; slope: number; offset: number; checks: string[];
  proposedBy: string; proposedAt: Iso; note: string | null; decidedBy: string | null; decidedAt: Iso | null; decision: string | null; holdsFrom: Iso | null;
  basis?: CalibrationBasis; work?: ProbeWork[]; sheet?: SheetView | null; waitsForReview?: boolean; reviewedBy?: string | null; reviewedAt?: Iso | null; review?: string | null; objected?: boolean;
}
export interface LedgerView {
  received: number; stored: number; duplicates: number; refused: number; inFlight: number;
  storedByDeviceTime: number; storedByPacket: number; storedAtLeastOnce: number; messages: number;
}

export interface ReadingPoint { s: string; t: number; r: number; v: number; g: boolean }
export interface ReadingsDelta { circuit: string; readings: ReadingPoint[] }
export interface HealthView { at: Iso; broker: string; plantFile: string[]; ledger: LedgerView }

type Column = (number | null)[];
export interface SeriesView { series: string; tier: Tier; t: number[]; min: Column; mean: Column; max: Column; corrected: Column | null }

export interface TestResult { measurand: Measurand; value: number; method: TestMethod; censoring: Censoring; dilution: number; step?: number | null; look?: CellLook }
export interface PanelReading { probeId: string; value: number }
export interface CheckRequest {
  poolId: string; sampledAt: Iso; enteredAt: Iso; who: string; point: SamplePoint; place: string | null;
  results: TestResult[]; panel: PanelReading[]; bottomVisible: boolean | null; bathers: number | null; note: string | null;
  corrects?: string | null; correctionReason?: string | null;
}
export interface ManualCheck extends CheckRequest { id: string }
export interface CheckAnswer {
  check: ManualCheck; arrivedAt: Iso; combined: CombinedView | null; remarks: FieldSaid[]; judgements: JudgementView[];
}
export interface JudgementView {
  checkId: string; probeId: string; measurand: Measurand; verdict: Verdict; probe: WithU | null; test: WithU | null; difference: WithU | null;
  bias: WithU | null; standing: Standing; reasons: Said[]; sampledAt: Iso;
}
export interface Problem { type: string; title: string; status: number; errors: FieldSaid[] }

export interface OfferedCalibration { kind: CalibrationKind; slope: number; offset: number; checks: string[]; why: Said[] }
export interface ProposeCalibration {
  probeId: string; kind: CalibrationKind; slope: number; offset: number; checks: string[]; by: string; note: string | null;
}
export interface DecideCalibration { decision: CalibrationStatus; by: string; why: string | null; holdsFrom: Iso }
export interface ShelveRequest { by: string; why: string; minutes: number; oneShot?: boolean }
export interface ResetRequest { by: string; comment: string | null }
/** What was done after dosing into standing water. */
export interface MakeSafeRequest { bathersOut: boolean; pumpsIsolated: boolean; circulationHeld: boolean; roomLeft: boolean; tankDealtWith: boolean; by: string; comment: string | null }
/** Out of service and back: by rule and subject, whether it stands or not. */
export interface OutOfServiceRequest { rule: string; subject: string; by: string; why: string | null; until?: Iso | null }
export interface AlarmChangeView { at: Iso; change: AlarmChange; by: string | null; comment: string | null; alarm: AlarmView }
export interface RefusalView {
  id: string; receivedAt: Iso; circuit: string; topic: string; payloadText: string; payloadBytes: number; reason: string; text: string;
}
