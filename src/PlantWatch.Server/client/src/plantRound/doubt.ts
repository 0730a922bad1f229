import type { RoundItemView, RoundReadingKind } from '../contract.plantRound';
import { readTyped } from '../format/number';

/** What a gauge of a kind can show; beyond it a digit slipped, and the server refuses it (Core/Plans/RoundItem, RoundReadings.Possible). */
export const possible: Record<Exclude<RoundReadingKind, 'works'>, readonly [number, number]> = {
  pressure: [-100, 2_000], flow: [0, 10_000], small_flow: [0, 5_000], percent: [0, 200], meter: [0, 100_000_000], amount: [0, 10_000],
};

export const isPossible = (kind: RoundReadingKind, value: number): boolean => kind === 'works' || (value >= possible[kind][0] && value <= possible[kind][1]);

/** How much fresh water a plant takes in a day before it is asked whether the figure was read right: a quarter of what its pools hold (our choice; a pool that is filled anew takes more). */
const aDay = 0.25;
const day = 86_400_000;

export type Doubt = { kind: 'low' | 'high'; at: number } | { kind: 'back' } | { kind: 'far'; more: number };

/**
 * What is odd about a figure while it is typed: never in the way.
 * @param holds water in the pools of the circuit, m3; null where nobody knows.
 */
export function doubtOf(item: RoundItemView, text: string, now: number, holds: number | null): Doubt | null {
  const typed = readTyped(text);
  if (typed.kind !== 'number' || !isPossible(item.kind, typed.value)) return null;
  if (item.low !== null && typed.value < item.low) return { kind: 'low', at: item.low };
  if (item.high !== null && typed.value > item.high) return { kind: 'high', at: item.high };
  if (item.kind !== 'meter' || item.lastValue === null) return null;
  const more = typed.value - item.lastValue;
  if (more < 0) return { kind: 'back' };
  const days = Math.max(1, item.lastAt === null ? 1 : (now - Date.parse(item.lastAt)) / day);
  return item.what === 'make_up_meter' && holds !== null && more > aDay * holds * days ? { kind: 'far', more } : null;
}
