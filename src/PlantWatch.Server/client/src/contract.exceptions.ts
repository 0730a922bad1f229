// The shapes of the server's Contracts.Exceptions.cs.

import type { Iso, Said } from './contract.words';

export type BreachGrade = 'operating' | 'closure' | 'stop' | 'laboratory';
export type OwedAct = 'act_and_retest' | 'retest' | 'settle' | 'resample' | 'incident';
export type Closing = 'none' | 'by_retest' | 'corrected' | 'by_person' | 'limit_gone' | 'pool_gone' | 'goes_on';
export type StepKind = 'seen' | 'words' | 'dose' | 'pool_closed' | 'new_water' | 'filter_washed' | 'retest' | 'reading' | 'back_inside' | 'reading_corrected' | 'reopened' | 'incident' | 'job' | 'calibrated' | 'incident_over';
export type RetestWord = 'none' | 'inside' | 'at_limit' | 'outside' | 'not_proven';
export interface ExceptionStepView {
  kind: StepKind; id: string; at: Iso; minutes: number; by: string | null; word: RetestWord; what: Said | null; text: string | null; withdrawn: boolean; isAction: boolean;
}
export interface OwedView { act: OwedAct; by: Iso | null; overdue: boolean; who: string | null }
export interface ExceptionView {
  id: string; circuit: string; poolId: string | null; place: string; quantity: string; name: string; grade: BreachGrade; rule: string; ruleTitle: string; source: 'test' | 'probe' | 'laboratory';
  reading: Said; readAt: Iso; readBy: string | null; readingWithdrawn: boolean; owed: OwedView | null; action: ExceptionStepView | null; retest: ExceptionStepView | null;
  closing: Closing; closedAt: Iso | null; closedBy: string | null; closedWhy: string | null; minutesToClosing: number | null; steps: ExceptionStepView[];
}
export interface ExceptionsView { month: string | null; open: ExceptionView[]; closed: ExceptionView[]; page: number; pages: number; count: number }
