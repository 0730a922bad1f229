import { signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { get } from '../api/http';
import { recallJson, remember } from '../api/kept';
import type { Measurand } from '../contract';
import type { CircuitLimitsView, StopView } from '../contract.limits';
import { onLive } from '../live/connection';
import { decimalsOf, fixed } from '../format/number';
import { circuitOfPool, limitsOfPool, site } from '../live/store';
import { beyond, limitOf } from '../parts/beyond';
import { words } from '../words';

/** The ends of a stop; a temperature has no lower one. */
export type StopEnds = Pick<StopView, 'quantity' | 'low' | 'high'>;

/** The stops of each circuit as last heard of: they hold in a cellar without signal too. */
export const stops = signal<Record<string, StopEnds[]>>(recallJson<Record<string, StopEnds[]>>('stops') ?? {});

async function ask(): Promise<void> {
  for (const { id } of site.peek()?.circuits ?? []) {
    const answer = await get<CircuitLimitsView>(`/circuits/${encodeURIComponent(id)}/limits`);
    if (answer.ok) stops.value = { ...stops.peek(), [id]: answer.value.stops.map(({ quantity, low, high }) => ({ quantity, low, high })) };
  }
  remember('stops', JSON.stringify(stops.peek()));
}

/** Keeps them fresh while a page that asks is open. */
export function useStops(): void {
  const known = site.value?.circuits.map(c => c.id).join();
  useEffect(() => { void ask(); return onLive(() => void ask()); }, [known]);
}

/** By the mole what is nil or too much of chlorine is so of bromine, which is written by its own weight (Core/Chemistry/Chlorine/Bromine). */
const bromineOfChlorine = 2.25;

/** The stop that a value breaks, by the end that it is beyond; null while it breaks none. */
export function beyondStop(of: readonly StopEnds[], m: Measurand, value: number): { side: 'low' | 'high'; at: number } | null {
  const by = m === 'bromine' ? bromineOfChlorine : 1, stop = of.find(s => s.quantity === (m === 'bromine' ? 'free_chlorine' : m));
  if (!stop) return null;
  if (stop.low !== null && value < stop.low * by) return { side: 'low', at: stop.low * by };
  return value > stop.high * by ? { side: 'high', at: stop.high * by } : null;
}

export const stopsOfPool = (poolId: string): readonly StopEnds[] => stops.value[circuitOfPool(poolId)?.id ?? ''] ?? [];

/** On which side of a stop or, inside of it, of its limits a value stands, in words: a stop is never told as a mere limit. Null where it is outside of neither. */
export function outside(poolId: string, m: Measurand, value: number | null): { says: string; stop: 'low' | 'high' | null } | null {
  const broken = value === null ? null : beyondStop(stopsOfPool(poolId), m, value);
  if (broken) return { says: words.round.stop[broken.side](fixed(broken.at, decimalsOf(m))), stop: broken.side };
  const says = beyond(value, limitOf(limitsOfPool(poolId), m));
  return says === null ? null : { says, stop: null };
}
