import type { CalibrationView, JudgementView, OfferedCalibration, ProbeInfo, ProbeView, Said } from './contract';

// A probe with its past, as the server's Contracts.Probe.cs writes it.
export interface ProbeHistory {
  info: ProbeInfo; now: ProbeView; judgements: JudgementView[]; calibrations: CalibrationView[]; offer: OfferedCalibration | null;
  /** Why there is an offer, or why there is none. */
  advice: Said[];
}
