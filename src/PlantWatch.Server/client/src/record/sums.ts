import type { LedgerView } from '../contract';

/** Received = stored + duplicates + refused + in flight: what does not close was lost. */
export const closes = (l: LedgerView) => l.received === l.stored + l.duplicates + l.refused + l.inFlight;
