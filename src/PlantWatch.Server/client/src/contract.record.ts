// The record in words. Mirrors Contracts.Record.cs.
import type { Iso } from './contract';

export type RecordGroup = 'all' | 'exceptions' | 'tests' | 'doses' | 'jobs' | 'filters' | 'reagents' | 'probes' | 'pools' | 'limits' | 'chemicals' | 'handovers' | 'notes' | 'rounds';
export interface EntryView { id: string; at: Iso; happenedAt: Iso; about: RecordGroup; subjectName: string; text: string; by: string | null }
export interface EntriesView { entries: EntryView[]; more: boolean }
