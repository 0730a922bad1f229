import type { Iso } from './contract';

// The handover between two shifts, as the server's Contracts.Handover.cs writes it.
export type HandoverPart = 'unknown' | 'pool' | 'alarm' | 'put_away' | 'job' | 'task' | 'check';
export type HandoverMove = 'none' | 'new' | 'changed' | 'same' | 'gone';
export interface HandoverSaid { id: string; from: string | null; to: string | null; note: string | null; remark: string | null; writtenAt: Iso | null; signedAt: Iso | null }
export interface HandoverLineView { part: HandoverPart; key: string; circuit: string; subjectName: string; title: string | null; text: string | null; said: string | null; state: string; move: HandoverMove }
export interface PastHandover { said: HandoverSaid; lines: HandoverLineView[]; intact: boolean }
export interface HandoverView { shown: string; waiting: HandoverSaid | null; last: HandoverSaid | null; lines: HandoverLineView[]; gone: HandoverLineView[]; past: PastHandover[] }
