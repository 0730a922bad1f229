import type { Iso } from './contract';
import type { Priority, Said } from './contract.words';

// A dosing pump by what the water does, as the server's Contracts.Pump.cs writes it.
export interface PumpPageView {
  id: string; lacks: Said[]; insight: PumpInsightView | null; verdicts: PumpVerdictView[]; todayLitres: number | null; dailyLimitLitres: number | null; tankFellLitres: number | null; drivenLitres: number | null;
  course: PumpCourseView; marks: PumpMark[];
}
export interface PumpInsightView { since: Iso; daysLearned: number; daysWanted: number; lagMinutes: number; fullLitresPerHour: number | null; suspicion: number }
export interface PumpVerdictView {
  trouble: string; text: string; saidAt: Iso | null; since: Iso | null; litres: number | null; expected: number | null; observed: number | null; certainty: number | null; alarmId: string | null;
  priority: Priority; action: string;
}
export interface PumpCourseView { t: number[]; driven: (number | null)[]; usual: (number | null)[] | null; probeId: string | null; seen: (number | null)[]; expected: (number | null)[] | null; tank: (number | null)[] | null }
export interface PumpMark { at: Iso; kind: 'alarm' | 'cleared' | 'job'; text: string }
