import { recallJson, remember } from '../api/kept';
import type { PhBuffer, ProbeWork, Quinhydrone } from '../contract.bench';
import { uuid7 } from '../format/uuid7';

// A calibration under way, as typed and as far as it has come. It lies in the browser: a reload, a dead battery of the network or a walk to the store loses nothing.

export type Step = 'start' | 'found' | 'work' | 'points' | 'result' | 'done';

/** One solution as far as it has come. */
export interface PointDraft {
  buffer: PhBuffer; quinhydrone: Quinhydrone;
  /** Value on the label of a solution that is in no table; empty for one that is. */
  labelled: boolean; label: string;
  celsius: string;
  /** Since when the probe stands in it, Unix milliseconds; null before. */
  since: number | null;
  typed: string; millivolts: boolean;
  /** What the probe settled on; null before, or when it was typed. */
  settled: number | null; at: number | null;
}

export interface Bottle { lot: string; expires: string }

export interface BenchDraft {
  sheetId: string; workId: string; startedAt: number | null; step: Step; place: number;
  found: PointDraft[]; noFound: boolean; work: ProbeWork[]; untouched: boolean; points: PointDraft[]; bottles: Record<string, Bottle>; note: string;
}

export const emptyPoint = (buffer: PhBuffer, quinhydrone: Quinhydrone = 'unknown'): PointDraft =>
  ({ buffer, quinhydrone, labelled: false, label: '', celsius: '', since: null, typed: '', millivolts: false, settled: null, at: null });

/** The solutions a probe stands in, in order: a buffer near 7 first, then one at least 2 pH away. */
export const solutionsOf = (measurand: string): PointDraft[] =>
  measurand === 'ph' ? [emptyPoint('technical7'), emptyPoint('technical4')] : measurand === 'orp' ? [emptyPoint('unknown', 'phthalate')] : [];

export const emptyDraft = (measurand: string): BenchDraft => ({
  sheetId: uuid7(), workId: uuid7(), startedAt: null, step: 'start', place: 0, found: solutionsOf(measurand), noFound: false, work: [], untouched: false, points: solutionsOf(measurand), bottles: {}, note: '',
});

const key = (probeId: string) => 'bench.' + probeId;

export const recallDraft = (probeId: string, measurand: string): BenchDraft => ({ ...emptyDraft(measurand), ...recallJson<BenchDraft>(key(probeId)) });

export const keepDraft = (probeId: string, draft: BenchDraft | null): void => void remember(key(probeId), draft && JSON.stringify(draft));

/** The name a bottle is remembered by. */
export const bottleOf = (p: PointDraft): string => (p.labelled ? 'label' : p.buffer !== 'unknown' ? p.buffer : p.quinhydrone);
