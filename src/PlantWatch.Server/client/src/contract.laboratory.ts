// The shapes of the server's Contracts.Laboratory.cs and Contracts.AlarmHealth.cs.

import type { Iso } from './contract.words';

export type Organism = 'colony_count' | 'escherichia_coli' | 'pseudomonas_aeruginosa' | 'legionella';
export type CountSense = 'counted' | 'below' | 'above' | 'not_detected';
export type LabVerdict = 'no_limit' | 'inside' | 'not_proven' | 'outside';
export interface LabLimitView { organism: Organism; name: string; high: number; millilitres: number; source: string }
export interface LabPoolView { poolId: string; name: string; limits: LabLimitView[]; everyDays: number | null; sampleDue: Iso | null; resampleDue: Iso | null }
export interface LabCountView {
  organism: Organism; name: string; count: number; sense: CountSense; millilitres: number; perBasis: number; basisMillilitres: number; high: number | null; verdict: LabVerdict; open: boolean;
}
export interface LabWaterView { measurand: string; name: string; unit: string; value: number; at: Iso; probeId: string | null }
export interface LabResultView {
  id: string; poolId: string; point: string; place: string | null; sampledAt: Iso; reportedAt: Iso; enteredAt: Iso; laboratory: string; sampleNumber: string; by: string; note: string | null;
  counts: LabCountView[]; water: LabWaterView[]; open: boolean; closedBy: string | null; closedWhy: string | null; closedAt: Iso | null; correctedBy: string | null;
}
export interface LabView { pools: LabPoolView[]; results: LabResultView[] }

export interface HealthFigure { key: string; name: string; value: number | null; unit: string; target: string; provenance: '' | 'published' | 'secondary' | 'from_memory'; meets: boolean | null }
export interface BusyAlarmView { rule: string; title: string; subject: string; subjectName: string; count: number; share: number }
export interface LongAlarmView { rule: string; title: string; subject: string; subjectName: string; from: Iso; to: Iso }
export interface AlarmHealthView {
  month: string; from: Iso; to: Iso; people: number; told: number; perHour: number; figures: HealthFigure[]; days: { from: Iso; count: number }[]; busiest: BusyAlarmView[];
  chattering: BusyAlarmView[]; stale: LongAlarmView[]; floods: { from: Iso; to: Iso; count: number }[];
}
