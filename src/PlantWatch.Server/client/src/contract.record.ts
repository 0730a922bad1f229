// The record in words. Mirrors Contracts.Record.cs.
import type { Iso } from './contract';

export type RecordGroup = 'all' | 'exceptions' | 'tests' | 'doses' | 'jobs' | 'filters' | 'reagents' | 'probes' | 'pools' | 'limits' | 'chemicals' | 'handovers' | 'notes' | 'rounds';
export interface EntryView { id: string; at: Iso; happenedAt: Iso; about: RecordGroup; subjectName: string; text: string; by: string | null }
export interface EntriesView { entries: EntryView[]; more: boolean }

/** What the record takes up. Mirrors Contracts.Storage.cs. */
export interface StorageView {
  measuredAt: Iso; bytes: number; freeBytes: number; tables: { name: string; bytes: number }[]; readings: number; letGo: number; readingsADay: number; bytesADay: number; bytesInAYear: number;
  diskFreeBytes: number; daysLeft: number | null; rawDays: number | null; minuteDays: number | null; gone: { circuit: string; before: Iso }[]; backupAt: Iso | null;
}
