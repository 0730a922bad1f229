import { useSignalEffect, type Signal } from '@preact/signals';
import { useState } from 'preact/hooks';
import type { Shown } from './window';

export interface Around { from: number; to: number }

/** A time around the window, the same while the window moves about in it: what is asked for once for many pictures. */
export function useAround(shown: Signal<Shown>): Around {
  const [around, setAround] = useState(() => widened(shown.peek()));
  useSignalEffect(() => {
    const w = shown.value;
    setAround(a => (w.from < a.from || w.to > a.to || a.to - a.from > 8 * (w.to - w.from) ? widened(w) : a));
  });
  return around;
}

// Whole minutes, so that a window that follows does not make a new question every second; years are not asked for on both sides.
function widened(w: Shown): Around {
  const margin = Math.min(w.to - w.from, 60 * 86_400_000);
  return { from: Math.floor((w.from - margin) / 60_000) * 60_000, to: Math.ceil((w.to + margin) / 60_000) * 60_000 };
}
