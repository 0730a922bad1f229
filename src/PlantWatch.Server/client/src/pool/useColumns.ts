import { type Signal, useSignalEffect } from '@preact/signals';
import { useEffect, useRef, useState } from 'preact/hooks';
import { get, type Answer } from '../api/http';
import type { ProbeInfo, SeriesView, Tier } from '../contract';
import { serverNow } from '../live/clock';
import { onLive } from '../live/connection';
import { onReadings } from '../live/store';
import { append, columnsOf, noColumns, type Columns } from './columns';
import { askAhead, seriesQuestion, takeAhead } from './seriesAhead';
import { minute, type Shown } from './window';

export interface Held { columns: Columns; tier: Tier | null; failed: boolean }

const margin = 0.25;
const step: Record<Tier, number> = { raw: 10_000, minute, quarter_hour: 15 * minute, hour: 60 * minute, day: 1440 * minute };

/**
 * The readings of a probe for the window and a little around it, asked for again a moment after the window has changed. Single readings
 * are carried on live; coarser tiers are asked for again now and then while the window follows. No probe, no question.
 */
export function useColumns(probe: ProbeInfo | null, shown: Signal<Shown>, width: number, changed: () => void): { held: { current: Held }; state: 'loading' | 'ready' | 'failed'; tier: Tier | null } {
  const held = useRef<Held>({ columns: noColumns(), tier: null, failed: false });
  const [state, setState] = useState<{ state: 'loading' | 'ready' | 'failed'; tier: Tier | null }>({ state: 'loading', tier: null });
  const asked = useRef<{ from: number; to: number; round: number }>({ from: 0, to: 0, round: 0 });
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined), ahead = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);

  const load = async () => {
    if (!probe) return;
    const w = shown.peek(), round = asked.current.round + 1;
    asked.current = { from: w.from, to: w.to, round };
    const answer = await get<SeriesView>('/series' + seriesQuestion(probe.id, w, width, serverNow()));
    if (asked.current.round !== round) return;
    take(answer);
    clearTimeout(ahead.current);
    ahead.current = setTimeout(() => askAhead(probe.id, shown.peek(), width, serverNow()), 1_500);
  };
  const take = (answer: Answer<SeriesView>) => {
    if (answer.ok) held.current = { columns: columnsOf(answer.value), tier: answer.value.tier, failed: false };
    setState({ state: answer.ok ? 'ready' : 'failed', tier: held.current.tier });
    changed();
  };
  // What was asked for ahead is shown at once, and the newest of it asked for then.
  const showAhead = (w: Shown) => {
    const round = asked.current.round;
    void (probe && takeAhead(seriesQuestion(probe.id, w, width, serverNow()), serverNow()))?.then(answer => { if (answer.ok && asked.current.round === round) take(answer); });
  };
  const soon = (delay: number) => { clearTimeout(timer.current); timer.current = setTimeout(() => void load(), delay); };

  useEffect(() => {
    void load();
    const stop = onLive(() => void load());
    return () => { stop(); clearTimeout(timer.current); clearTimeout(ahead.current); asked.current.round++; };
  }, [probe?.id, width]);

  useSignalEffect(() => {
    const w = shown.value, was = asked.current, span = w.to - w.from;
    const sameSpan = Math.abs(span - (was.to - was.from)) < span * 0.001;
    const tier = held.current.tier ?? 'raw';
    // While it follows, single readings arrive by themselves; a coarser tier is worth asking for when a bucket may have closed.
    const patience = tier === 'raw' ? span * margin : Math.min(Math.max(step[tier] / 2, 15_000), 5 * minute);
    if (sameSpan && w.follow && w.to - was.to < patience && w.to >= was.to) return;
    if (sameSpan && w.from === was.from) return;
    if (!sameSpan) showAhead(w);
    soon(160);
  });

  useEffect(() => onReadings(points => {
    if (!probe || held.current.tier !== 'raw') return;
    let more = false;
    for (const p of points) if (p.s === probe.id) more = append(held.current.columns, p, held.current.columns[4].some(v => v !== null), probe.everySeconds) || more;
    if (more) changed();
  }), [probe?.id]);

  return { held, ...state };
}
