import type { Measurand, Priority } from './contract';
import type { HealthFigure } from './contract.laboratory';
import type { Iso, Said } from './contract.words';

// The what-if on limits, as the server's Contracts.WhatIfLimits.cs writes it.
export interface LimitQuantity {
  measurand: Measurand; name: string; unit: string; watched: boolean; low: number | null; lowFrom: string; high: number | null; highFrom: string;
  ownLow: number | null; ownHigh: number | null; stop: [number, number] | null;
  deadband: number; onDelaySeconds: number; offDelaySeconds: number; ownDeadband: number | null; ownOnDelaySeconds: number | null; ownOffDelaySeconds: number | null; source: string | null;
}
export interface LimitPool { id: string; name: string; quantities: LimitQuantity[] }
export interface WhatIfLimitsChoices { recordBegins: Iso | null; now: Iso; longestDays: number; mayLoosen: string[]; pools: LimitPool[] }

export interface WhatIfLimit {
  pool: string; measurand: Measurand; low: number | null; high: number | null; deadband: number | null; onDelaySeconds: number | null; offDelaySeconds: number | null;
  source: string | null; loosenedBy: string | null; loosenedWhy: string | null;
}
export interface WhatIfLimitsRequest { from: Iso; to?: Iso; changes: WhatIfLimit[] }

export type RunState = 'waiting' | 'running' | 'done' | 'cancelled' | 'failed';
export interface LimitAlarm {
  rule: string; title: string; subject: string; subjectName: string; pool: string | null; priority: Priority; from: Iso; to: Iso | null; minutes: number; called: boolean; cause: Said;
}
export interface LimitRule { rule: string; title: string; priority: Priority; before: number; after: number; lost: number; gained: number; hoursBefore: number; hoursAfter: number }
export interface LimitSide { alarms: number; stoodHours: number; told: number; perHour: number; figures: HealthFigure[] }
export interface WhatIfLimitsResult {
  before: LimitSide; after: LimitSide; lostCount: number; gainedCount: number; same: number; lostCritical: number; rules: LimitRule[]; lost: LimitAlarm[]; gained: LimitAlarm[];
  recorded: number; foundAgain: number; notRecorded: number; readings: number; seconds: number; notes: Said[];
}
export interface WhatIfLimitsRun {
  id: string; state: RunState; ahead: number; progress: number; askedAt: Iso; from: Iso; to: Iso; lines: { pool: string; poolName: string; line: string }[];
  result: WhatIfLimitsResult | null; fault: Said | null;
}
