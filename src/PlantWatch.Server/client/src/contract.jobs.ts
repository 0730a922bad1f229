// Jobs of maintenance, planned work, and how often things failed: as Contracts.Jobs.cs writes them.

import type { Iso, JobEffect, JobState } from './contract.words';

export interface PartUsed { name: string; count: number; number: string | null }
export interface JobRequest {
  asset: string; seen: string; done: string | null; state: JobState; alarmId: string | null; by: string; taskId: string | null; parts: PartUsed[]; minutes: number | null; pictures: string[];
  /** Time of the version that the writer saw; null for a new job. */
  after: string | null;
}
export interface JobView {
  id: string; asset: string; assetName: string; seen: string; done: string | null; state: JobState; alarmId: string | null; by: string; at: Iso; taskId: string | null;
  parts: PartUsed[]; minutes: number | null; openedAt: Iso; openedBy: string; doneAt: Iso | null; effect: JobEffect; effectText: string | null; signs: string[]; pictures: string[];
}
export interface TaskView {
  id: string; circuit: string; name: string; asset: string; assetName: string; everyDays: number; doneAt: Iso | null; dueAt: Iso; overdue: boolean; jobId: string | null;
}
export interface ReliabilityView {
  asset: string; assetName: string; failures: number; days: number; downHours: number; meanDays: number | null; lowDays: number; highDays: number | null; repairHours: number | null; repeatOffender: boolean;
}
