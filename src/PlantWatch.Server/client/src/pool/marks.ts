import type { CheckAnswer, Measurand } from '../contract';

/** A manual test on a strip. */
export interface Mark { id: string; t: number; value: number; u: number; bound: 'none' | 'below' | 'above'; doubted: boolean; who: string }

/** Work on a probe or a calibration of it: a moment from which its number may mean something else. */
export interface Happening { t: number; text: string }

/** Checks that are doubted, or taken in, as things stand now. A check doubted at first counts once its repeat has confirmed it. */
export interface DoubtNow { doubted: ReadonlySet<string>; takenIn: ReadonlySet<string> }

/** The tests of a measurand; beside a probe with the uncertainty that its judgement worked out. */
export function marksOf(checks: CheckAnswer[], measurand: Measurand, probeId?: string, standing?: DoubtNow): Mark[] {
  const marks: Mark[] = [];
  for (const { check, judgements, combined } of checks) {
    const judged = probeId ? judgements.find(j => j.probeId === probeId) : undefined;
    const result = check.results.find(r => r.measurand === measurand);
    const t = Date.parse(check.sampledAt);
    const doubted = standing?.doubted.has(check.id) || (judged?.verdict === 'check_suspect' && !standing?.takenIn.has(check.id));
    // ORP is never tested by hand: what stands beside it is the pool's own line, told by the judgement.
    if (judged?.test) marks.push({ id: check.id, t, value: judged.test.value, u: judged.test.u, bound: result?.censoring ?? 'none', doubted, who: check.who });
    else if (measurand === 'combined_chlorine' && combined && combined.value !== null) marks.push({ id: check.id, t, value: combined.value, u: combined.u, bound: 'none', doubted: combined.remark !== null, who: check.who });
    else if (result) marks.push({ id: check.id, t, value: result.value, u: 0, bound: result.censoring, doubted, who: check.who });
  }
  return marks.sort((a, b) => a.t - b.t);
}
