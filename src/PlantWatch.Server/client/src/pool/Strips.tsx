import { useComputed, useSignal, useSignalEffect, type Signal } from '@preact/signals';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { query } from '../api/http';
import type { CheckAnswer, LimitBand, Measurand, ProbeInfo } from '../contract';
import { dayClock, fullClock } from '../format/zone';
import { now, serverNow } from '../live/clock';
import { headingOf, zone } from '../live/store';
import { limitOf } from '../parts/beyond';
import { usePolled } from '../parts/usePolled';
import { words } from '../words';
import { gestures } from './gestures';
import { ProbeStrip, type Overlay } from './ProbeStrip';
import { TestStrip } from './TestStrip';
import { following, followed, held, panned, shownSignal, spans, zoomed, type Shown, type SpanName } from './window';

function Bar({ shown, cursor }: { shown: Signal<Shown>; cursor: Signal<number | null> }) {
  const w = shown.value, span = w.to - w.from;
  const text = useComputed(() => {
    const s = shown.value;
    return cursor.value !== null ? dayClock(cursor.value, zone.value) : `${fullClock(s.from, zone.value)} \u2013 ${s.follow ? words.strips.now : fullClock(s.to, zone.value)}`;
  });
  const set = (next: Shown) => { shown.value = next; };
  return (
    <div class="strips-bar">
      <div class="segments" role="group" aria-label={words.strips.range}>
        {(Object.keys(spans) as SpanName[]).map(k => (
          <button key={k} type="button" class="slim" data-testid={`range-${k}`} aria-pressed={Math.abs(span - spans[k]) < spans[k] * 0.01} onClick={() => set(following(spans[k], serverNow()))}>
            {words.strips.spans[k]}</button>))}
      </div>
      <div class="segments">
        <button type="button" class="slim" aria-label={words.strips.earlier} onClick={() => set(panned(w, -0.5, serverNow()))}>{'\u2039'}</button>
        <button type="button" class="slim" aria-label={words.strips.later} disabled={w.follow} onClick={() => set(panned(w, 0.5, serverNow()))}>{'\u203a'}</button>
        <button type="button" class="slim" aria-label={words.strips.closer} onClick={() => set(zoomed(w, 2, 0.5, serverNow()))}>+</button>
        <button type="button" class="slim" aria-label={words.strips.wider} onClick={() => set(zoomed(w, 0.5, 0.5, serverNow()))}>{'\u2212'}</button>
        <button type="button" class="slim" data-testid="range-now" aria-pressed={w.follow} onClick={() => set(following(span, serverNow()))}>{words.strips.now}</button>
      </div>
      <span class="strips-time" data-testid="strips-time">{text.value}</span>
    </div>
  );
}

/** The tests around the window; asked for anew when the window has moved out of what was asked, or `fresh` changes. */
function useChecks(poolId: string | null, shown: Signal<Shown>, fresh: string): CheckAnswer[] {
  const [around, setAround] = useState(() => widened(shown.peek()));
  useSignalEffect(() => {
    const w = shown.value;
    setAround(a => (w.from < a.from || w.to > a.to || a.to - a.from > 8 * (w.to - w.from) ? widened(w) : a));
  });
  const path = poolId === null ? null : '/checks' + query({ pool: poolId, from: new Date(around.from).toISOString(), to: new Date(around.to).toISOString() });
  const { data, reload } = usePolled<CheckAnswer[]>(path);
  useEffect(() => { if (data) reload(); }, [fresh]);
  const kept = useRef<CheckAnswer[]>([]);
  if (data) kept.current = data;
  return kept.current;
}

function widened(w: Shown): { from: number; to: number } {
  const span = w.to - w.from;
  // Whole minutes, so that a window that follows does not make a new question every second.
  return { from: Math.floor((w.from - span) / 60_000) * 60_000, to: Math.ceil((w.to + span) / 60_000) * 60_000 };
}

/** The same strips as a file, drawn by the server. */
function Images({ poolId, shown }: { poolId: string; shown: Signal<Shown> }) {
  const { from, to } = shown.value;
  const q = query({ from: new Date(from).toISOString(), to: new Date(to).toISOString(), width: 1200, height: 900, theme: 'light' });
  const base = `/api/v1/charts/pools/${encodeURIComponent(poolId)}`;
  return <span>{words.strips.image}: <a href={base + '.png' + q} target="_blank" rel="noopener">PNG</a>, <a href={base + '.svg' + q} target="_blank" rel="noopener">SVG</a>.</span>;
}

/** A moment that the first picture holds. */
export interface Around { from: number; to: number }

export interface StripsProps { poolId: string | null; probes: ProbeInfo[]; limits: readonly LimitBand[]; tests: Measurand[]; fresh: string; first?: SpanName; chart?: boolean; overlay?: Overlay | undefined; around?: Around | undefined }

/** All strips of a page under one time axis. */
export default function Strips({ poolId, probes, limits, tests, fresh, first, chart, overlay, around }: StripsProps) {
  const shown = useMemo(() => { const s = shownSignal(serverNow()); if (first) s.value = following(spans[first], serverNow()); if (around) s.value = held(around.from, around.to, serverNow()); return s; }, []);
  const cursor = useSignal<number | null>(null);
  const host = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(0);
  const checks = useChecks(poolId, shown, fresh);

  useSignalEffect(() => { shown.value = followed(shown.peek(), now.value); });
  useEffect(() => {
    const h = host.current!;
    const watch = new ResizeObserver(() => setWidth(Math.floor(h.clientWidth)));
    watch.observe(h);
    const stop = gestures(h, shown, () => {
      const over = h.querySelector('.u-over')?.getBoundingClientRect();
      return over ? { left: over.left, width: over.width } : null;
    });
    return () => { watch.disconnect(); stop(); };
  }, []);

  const common = { shown, cursor, width, checks };
  const count = probes.length + tests.length;
  return (
    <div class="sheet strips">
      <Bar shown={shown} cursor={cursor} />
      <div class="strips-host" ref={host} tabIndex={0} role="group" aria-label={words.strips.label} aria-describedby="strips-keys" data-testid="strips">
        {width > 0 && probes.map((p, i) => <ProbeStrip key={p.id} {...common} probe={p} heading={headingOf(p, probes)} limit={limitOf(limits, p.measurand)} overlay={overlay?.probeId === p.id ? overlay : undefined} axis={i === count - 1} />)}
        {width > 0 && tests.map((m, i) => <TestStrip key={m} {...common} measurand={m} limit={limitOf(limits, m)} happenings={overlay?.probeId === m ? overlay.happenings : undefined} axis={probes.length + i === count - 1} />)}
      </div>
      <p class="hint strips-keys" id="strips-keys"><span class="key-line" aria-hidden="true">{words.strips.legend}{overlay && ` ${overlay.legend ?? `${words.probePage.strips.doubted} \u00b7 ${words.probePage.strips.event}`}${overlay.flowSwitch ? ` \u00b7 ${words.probePage.strips.shaded}` : ''}.`}</span> {words.strips.touch} <span class="keys-only">{words.strips.keys}</span> {poolId !== null && chart && <Images poolId={poolId} shown={shown} />}</p>
    </div>
  );
}
