import type { Priority } from './contract';

export type ChannelKind = 'mqtt' | 'webhook' | 'email';

/** A way by which people are told; `where` holds no secret. */
export interface ChannelView {
  id: string; name: string; kind: ChannelKind; from: Priority; where: string; fails: boolean;
  lastDeliveredAt: string | null; waiting: number; givenUp: number; trouble: string | null; failingSince: string | null;
}

export interface TellingView {
  channels: ChannelView[]; onCall: string[]; standsIn: boolean; next: string[]; nextAt: string | null;
  escalation: string[]; quietFrom: string | null; quietTo: string | null;
}

export interface TestMessageAnswer { delivered: boolean; to: string[]; trouble: string | null }
