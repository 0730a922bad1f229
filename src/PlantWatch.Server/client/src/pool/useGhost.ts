import type { Signal } from '@preact/signals';
import { useComputed, useSignalEffect } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { get, query } from '../api/http';
import type { ProbeInfo, SeriesView } from '../contract';
import { edgeMovedByDays, offsetsOf } from '../format/offset';
import { zone } from '../live/store';
import { columnsOf } from './columns';
import { days, ghostOf, longestCompared, type Compared, type Ghost } from './ghost';
import { hour, type Shown } from './window';

/** The line of another day under the window, for a probe; null while no day is compared with, or the window is too long for one. */
export function useGhost(probe: ProbeInfo, compared: Signal<Compared | null>, shown: Signal<Shown>, width: number, changed: () => void): { current: Ghost | null } {
  const ghost = useRef<Ghost | null>(null), round = useRef(0);
  // Asked for with room on both sides and only when the window has moved a quarter of itself: a day that is over does not change.
  const asked = useComputed(() => {
    const w = shown.value, span = w.to - w.from, step = span / 4;
    if (!compared.value || span > longestCompared) return null;
    return JSON.stringify([compared.value, Math.floor(w.from / step) * step - step, Math.ceil(w.to / step) * step + step, Math.round(span)]);
  });
  useSignalEffect(() => {
    const question = asked.value, mine = ++round.current;
    if (question === null) { ghost.current = null; changed(); return; }
    const [by, from, to, span] = JSON.parse(question) as [Compared, number, number, number], offset = offsetsOf(zone.peek());
    const past = [edgeMovedByDays(from, -days[by], offset) - hour, edgeMovedByDays(to, -days[by], offset) + hour] as const;
    void get<SeriesView>('/series' + query({ from: new Date(past[0]).toISOString(), to: new Date(past[1]).toISOString(), width: Math.max(50, Math.round(width * (past[1] - past[0]) / span)), probe: probe.id })).then(answer => {
      if (mine !== round.current) return;
      ghost.current = answer.ok ? ghostOf(columnsOf(answer.value), days[by], offset) : null;
      changed();
    });
  });
  return ghost;
}
