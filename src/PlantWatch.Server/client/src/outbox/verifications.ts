import type { VerificationView, VerifyRequest } from '../contract.instrument';
import { makeOutbox } from './make';

export const { box: verifications, kept: keptVerifications, outcomes: verificationOutcomes, flush: flushVerifications, start: startVerifications } =
  makeOutbox<VerifyRequest, VerificationView>('plantwatch.verifications.', '/instruments/verifications', answer => answer.id);
