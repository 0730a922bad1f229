// The shapes of the server's Contracts.AlarmStory.cs and Contracts.Rules.cs.

import type { AlarmChangeView, AlarmView } from './contract';
import type { Iso, Measurand, Priority } from './contract.words';

/** One alarm with all that is known of it, whether it stands or is over. */
export interface AlarmStory {
  alarm: AlarmView; live: boolean; subjectName: string; newerId: string | null; sentence: string; usualCause: string; clears: string; strip: AlarmStrip | null;
  cause: AlarmView | null; consequences: AlarmView[]; changes: AlarmChangeView[]; earlier: EarlierAlarm[];
}
export interface AlarmStrip { probeId: string | null; poolId: string | null; measurand: Measurand; low: number | null; high: number | null }
export interface EarlierAlarm { id: string; raisedAt: Iso; cause: string }

/** A rule in the words of docs/rules.md, with what it did here in the last 30 days. */
export interface RuleView {
  number: string; title: string; sentence: string; cause: string; consequence: string; action: string; timeToRespond: string; priority: Priority;
  onDelay: string; offDelay: string; deadband: string; suppressed: string; clears: string; provenance: string;
  latches: boolean; shelvable: boolean; mayLeaveService: boolean; reAlarmMinutes: number | null; rang: number; lastRang: Iso | null; standing: number;
  subjects: SubjectView[]; outOfService: OutOfServiceView[];
}
export interface SubjectView { subject: string; name: string }
export interface OutOfServiceView { id: string; subject: string; name: string; by: string | null; at: Iso | null; why: string | null; until: Iso | null }
