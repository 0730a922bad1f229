import type { Priority } from '../contract.words';

/** What can be told by sound: an alarm of a priority, or that the server is not heard any more. */
export type Call = Exclude<Priority, 'note'> | 'lost';

/** A note: when it begins and how long it lasts, in seconds, its pitch, and how loud it is, 0 to 1. */
export interface Note { at: number; lasts: number; hertz: number; loud: number }
/** A figure of notes, and after how many seconds it begins anew; null when it is heard once. */
export interface Tone { notes: Note[]; every: number | null }

const run = (from: number, step: number, lasts: number, loud: number, ...pitches: number[]): Note[] => pitches.map((hertz, i) => ({ at: from + i * step, lasts, hertz, loud }));

/**
 * Figures of our own. The graver, the more notes, the faster and the sooner again; pitches lie where ageing ears and small
 * loudspeakers still hear well (common practice). What is low is heard once: it has a shift.
 */
export const tones: Record<Call, Tone> = {
  critical: { notes: [...run(0, 0.17, 0.14, 1, 640, 800, 960), ...run(0.75, 0.17, 0.14, 1, 640, 800, 960)], every: 4 },
  high: { notes: run(0, 0.24, 0.2, 0.9, 860, 680, 860), every: 8 },
  medium: { notes: run(0, 0.32, 0.26, 0.7, 700, 560), every: 20 },
  low: { notes: run(0, 0, 0.35, 0.5, 560), every: null },
  lost: { notes: run(0, 0.5, 0.45, 0.7, 440, 330), every: 30 },
};

/** The gravest first. A server that is not heard may hide anything. */
export const order: Call[] = ['critical', 'high', 'lost', 'medium', 'low'];

export const secondsOf = (tone: Tone) => Math.max(...tone.notes.map(n => n.at + n.lasts));

/** A test has stood long enough: two rising notes, unlike any call, heard once. */
export const ready: Tone = { notes: run(0, 0.22, 0.2, 0.9, 520, 780), every: null };
