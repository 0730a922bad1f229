import type { DueView, Measurand, PoolInfo, PoolView } from '../contract';
import { fromField, toField } from '../format/zone';

/** What is to be tested at one pool on a round. */
export interface Duty { poolId: string; what: Measurand[]; dueAt: number | null; overdue: boolean; byPlan: boolean }

const minute = 60_000;
/** A check counts for a duty from an hour before its time and is overdue an hour after it, as the server has it (DueChecks.Allowance). */
export const allowance = 60 * minute;

/** Chlorine goes off while a sample stands, so it comes first; what the sample keeps longest comes last (common practice). Temperature is read in the pool itself. */
export const testOrder: Measurand[] = ['temperature', 'free_chlorine', 'bromine', 'total_chlorine', 'ph', 'total_alkalinity', 'calcium_hardness', 'cyanuric_acid', 'dissolved_solids', 'turbidity'];

/** The tests of one sample in their order: combined chlorine is free and total, and a bromine pool has one test for both. */
export function testsOf(what: Measurand[], disinfectant: string): Measurand[] {
  const chlorine: Measurand[] = ['free_chlorine', 'total_chlorine', 'combined_chlorine'];
  const asked = new Set(what.flatMap((m): Measurand[] => disinfectant === 'bromine' && chlorine.includes(m) ? ['bromine'] : m === 'combined_chlorine' ? ['free_chlorine', 'total_chlorine'] : [m]));
  return testOrder.filter(m => asked.has(m));
}

/** What a round takes in where the plan asks for nothing. */
export const usualTests: Measurand[] = ['temperature', 'free_chlorine', 'total_chlorine', 'ph'];

/** Duties whose time has come since the plant was last heard: whether somebody else has done them is not known here. */
export function dueByPlan(pool: PoolInfo, heardAt: number, now: number, zone: string): Duty[] {
  const days = [-1, 0, 1].map(n => toField(now + n * 86_400_000, zone).slice(0, 10));
  return pool.duties.flatMap(duty => {
    const times = days.flatMap(day => duty.at.map(at => fromField(`${day}T${at.slice(0, 5)}`, zone))).filter((t): t is number => t !== null);
    const open = times.filter(t => t - allowance <= now && t - allowance > heardAt);
    const dueAt = open.length > 0 ? Math.max(...open) : null;
    return dueAt === null ? [] : [{ poolId: pool.id, what: duty.what, dueAt, overdue: now > dueAt + allowance, byPlan: true }];
  });
}

const fromView = (d: DueView): Duty => ({ poolId: d.poolId, what: d.what, dueAt: Date.parse(d.dueAt), overdue: d.overdue, byPlan: false });

/** What is due at a pool, as one: its earliest time, overdue if any of it is. */
export function dutyOf(pool: PoolInfo, view: PoolView | undefined, heardAt: number | null, now: number, zone: string): Duty {
  const known = (view?.due ?? []).map(fromView);
  const planned = heardAt === null ? [] : dueByPlan(pool, heardAt, now, zone);
  const all = [...known, ...planned];
  return {
    poolId: pool.id, what: testsOf(all.flatMap(d => d.what), pool.disinfectant), dueAt: all.length > 0 ? Math.min(...all.map(d => d.dueAt!)) : null,
    overdue: all.some(d => d.overdue), byPlan: planned.length > 0 && known.length === 0,
  };
}

const rank = (d: Duty) => (d.overdue ? 0 : d.what.length > 0 ? 1 : 2);

/** The order to walk in: what is overdue first, then what is due; within that as the plant file lists the pools, which a plant writes in the order of its walk. */
export const inWalkingOrder = (duties: Duty[]): Duty[] => duties.map((d, i) => ({ d, i })).sort((a, b) => rank(a.d) - rank(b.d) || a.i - b.i).map(x => x.d);
