import type { GivenDoseRequest, GivenDoseView } from '../contract.dose';
import { makeOutbox } from './make';
import type { Outcome } from './outbox';

export type DoseOutcome = Outcome<GivenDoseView>;

export const { box: doses, kept: keptDoses, outcomes: doseOutcomes, flush: flushDoses, start: startDoses } =
  makeOutbox<GivenDoseRequest, GivenDoseView>('plantwatch.doses.', '/doses', answer => answer.dose?.id);
