import type { Measurand, TestMethod } from '../contract';
import type { ReagentView } from '../contract.reagent';

/** The reagents out of date that a result of this method is made with. */
export const oldOnes = (all: ReagentView[], m: Measurand, method: TestMethod) =>
  method === 'meter' ? [] : all.filter(r => r.word === 'out_of_date' && r.tests.includes(m) && r.method !== 'calibration' && (method === 'unknown' || r.method === 'any' || r.method === method));
