import type { Iso } from './contract.words';

// Notes about spans of time and the marks over the strips, as the server's Contracts.Notes.cs and Contracts.Marks.cs write them.
export interface NoteRequest { poolId: string; from: Iso; to: Iso; text: string; by: string; corrects: string | null; why: string | null; retracted: boolean }
export interface NoteVersion { id: string; from: Iso; to: Iso; text: string; by: string; saidAt: Iso; why: string | null; retracted: boolean }
export interface NoteView extends NoteVersion { poolId: string; /** What it said before, newest first. */ before: NoteVersion[] }

export type MarkKind = 'unknown' | 'test' | 'dose' | 'calibration' | 'probe' | 'alarm' | 'wash' | 'stock' | 'job' | 'pool' | 'laboratory' | 'gap' | 'plan';
export interface MarkView { id: string; kind: MarkKind; at: Iso; until: Iso | null; subject: string; subjectName: string; text: string; by: string | null }
export interface MarksView { marks: MarkView[]; more: boolean }
