// Instruments, as the server's Contracts.Instrument.cs writes them.
import type { Iso, Measurand } from './contract';

export type InstrumentKind = 'photometer' | 'comparator' | 'meter';
export type InstrumentWord = 'not_verified' | 'in_order' | 'overdue' | 'failed';
export type VerificationWord = 'none' | 'within' | 'outside';
export interface VerifyRequest { instrumentId: string; measurand: Measurand; standard: string; nominal: number; tolerance: number; reading: number; verifiedAt: Iso; by: string }
export interface VerificationView extends VerifyRequest { id: string; unit: string; word: VerificationWord }
export interface InstrumentTestView { measurand: Measurand; word: InstrumentWord; dueAt: Iso | null }
export interface InstrumentView { id: string; name: string; kind: InstrumentKind; everyDays: number; tests: InstrumentTestView[]; verifications: VerificationView[] }
