import type { CheckAnswer, CheckRequest } from '../contract';
import { makeOutbox } from './make';
import type { Item, Outcome } from './outbox';

export type CheckItem = Item<CheckRequest>;
export type CheckOutcome = Outcome<CheckAnswer>;

export const { box: checks, kept: keptChecks, outcomes, send: sendCheck, flush: flushChecks, start: startOutbox } =
  makeOutbox<CheckRequest, CheckAnswer>('plantwatch.outbox.', '/checks', answer => answer.check?.id);
