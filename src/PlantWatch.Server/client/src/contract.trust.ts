import type { Iso, Measurand, Said, WithU } from './contract.words';

// The story of a pool's probes and tests, as the server's Contracts.Trust.cs writes it.
export type StoryAnswer = 'cannot_tell' | 'all_agree' | 'probe_drifts' | 'test_suspect' | 'water_changed' | 'not_comparable';
export type StoryPart = 'none' | 'ph_test' | 'ph_probe' | 'chlorine_test' | 'chlorine_probe' | 'orp_probe';
export type StoryWeight = 'none' | 'leans' | 'likely' | 'strong';
export interface ExplanationView { part: StoryPart; probability: number }
export interface SignView { part: StoryPart; ratio: number; what: Said }
export interface StepView { act: string; part: StoryPart; probeId: string | null; minutes: number; settles: number; what: Said[] }
export interface PlausibleView { measurand: Measurand; low: number; high: number }
export interface SideView {
  probeId: string; panel: number | null; received: WithU | null; corrected: WithU | null; test: WithU | null; believed: WithU | null; panelDiffers: boolean;
}
export interface TrustStoryView {
  poolId: string; checkId: string | null; sampledAt: Iso | null; answer: StoryAnswer; part: StoryPart; probeId: string | null; probability: number; odds: number;
  weight: StoryWeight; says: Said[]; explanations: ExplanationView[]; signs: SignView[]; steps: StepView[]; plausible: PlausibleView[]; sides: SideView[];
  testBy: Iso | null; testWhy: Said | null;
}
