import { useSignal, useSignalEffect, type Signal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type uPlot from 'uplot';
import type { LimitBand } from '../contract';
import { zone } from '../live/store';
import { inTurn } from '../parts/inTurn';
import { paint } from '../parts/theme';
import { words } from '../words';
import { feed, makeChart, sizeStep } from './chart';
import type { Columns } from './columns';
import { ghostAt, type Compared, type Ghost } from './ghost';
import { readInk } from './ink';
import type { Happening, Mark } from './marks';
import type { NoteSpan } from './notes';
import { Readout, type Pair, type Pointed } from './Readout';
import type { Shade } from './shades';
import { summaryOf } from './summary';
import { SummaryText } from './SummaryText';
import type { Shown } from './window';

export interface StripProps {
  name: string; head: ComponentChildren; decimals: number; unit: string; limit: LimitBand | undefined; marks: Mark[]; columns: () => Columns; note: string;
  shown: Signal<Shown>; cursor: Signal<number | null>; width: number; axis: boolean; stepped?: boolean; testId: string;
  ghost?: (() => Ghost | null) | undefined; compared?: Signal<Compared | null> | undefined; noted?: Signal<readonly NoteSpan[]> | undefined;
  /** A test on the line was tapped. */
  onOpen?: ((checkId: string) => void) | undefined;
  /** Where the two lines are not the raw and the corrected one: what each is called. */
  pair?: Pair | undefined;
  happenings?: Happening[] | undefined; shades?: (() => Shade[]) | undefined;
  /** At least so long between two drawings, in milliseconds; as fast as the screen when left out. */
  pace?: number | undefined;
  /** How high the chart is, against the usual. */
  share?: number | undefined;
  /** Given the function that draws anew. */
  bind: (redraw: () => void) => void;
}

const none: Happening[] = [];

/** One measurand over time: a heading with the readout and the chart under it. */
export function Strip(p: StripProps) {
  const host = useRef<HTMLDivElement>(null);
  const chart = useRef<uPlot | null>(null);
  const marks = useRef(p.marks);
  const happenings = useRef(p.happenings ?? none);
  const shades = useRef(p.shades);
  shades.current = p.shades;
  const ghost = useRef(p.ghost);
  ghost.current = p.ghost;
  const pressed = useRef(0);
  const pointed = useSignal<Pointed>({ index: null, mark: null, happening: null, ghost: null });
  const frame = useRef(0);
  const [summary, say] = useState(() => summaryOf(p.columns(), p.shown.peek().from, p.shown.peek().to));
  const telling = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  // In words a moment after the picture: a screen reader is not told of every reading.
  const tell = () => { clearTimeout(telling.current); telling.current = setTimeout(() => say(summaryOf(p.columns(), p.shown.peek().from, p.shown.peek().to)), 700); };
  useEffect(() => () => clearTimeout(telling.current), []);
  const later = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const drawn = useRef(0);
  const paintNow = () => {
    cancelAnimationFrame(frame.current);
    frame.current = requestAnimationFrame(() => { drawn.current = performance.now(); if (chart.current) feed(chart.current, p.columns(), p.shown.peek()); });
    tell();
  };
  const draw = () => {
    const wait = (p.pace ?? 0) - (performance.now() - drawn.current);
    if (wait <= 0) paintNow();
    else if (later.current === undefined) later.current = setTimeout(() => { later.current = undefined; paintNow(); }, wait);
  };
  p.bind(draw);

  const step = sizeStep(), height = step * ((p.stepped ? 54 : 132) * (p.share ?? 1) + (p.axis ? 28 : 0));
  useEffect(() => {
    const place = host.current;
    if (!place || p.width < 80) return;
    // A chart takes its time on a phone: one after the other.
    const forget = inTurn(() => {
      const u = chart.current = makeChart({
        width: p.width, height, axis: p.axis, zone: zone.peek(), decimals: p.decimals, limit: p.limit, stepped: p.stepped ?? false, ink: readInk(place), marks: () => marks.current,
        happenings: () => happenings.current, shades: () => shades.current?.() ?? [], ghost: () => ghost.current?.() ?? null, notes: () => p.noted?.peek() ?? [],
        onCursor: (index, left) => {
          const near = (m: { t: number }) => left >= 0 && Math.abs(u.valToPos(m.t, 'x') - left) < 8;
          const t = left < 0 ? null : u.posToVal(left, 'x'), span = p.shown.peek().to - p.shown.peek().from;
          pointed.value = { index, mark: marks.current.find(near) ?? null, happening: happenings.current.find(near)?.text ?? null, ghost: t === null ? null : ghostAt(ghost.current?.() ?? null, t, span / 60) };
          p.cursor.value = t;
        },
      }, p.columns(), p.shown.peek(), place);
      draw();
    });
    return () => { forget(); clearTimeout(later.current); later.current = undefined; cancelAnimationFrame(frame.current); chart.current?.destroy(); chart.current = null; };
  }, [p.width, p.axis, p.limit, p.stepped, zone.value, paint.value, step]);

  useEffect(() => { marks.current = p.marks; happenings.current = p.happenings ?? none; draw(); }, [p.marks, p.happenings]);
  useSignalEffect(() => { p.shown.value; p.noted?.value; draw(); });

  // A tap, not the end of a drag.
  const tapped = (x: number) => { const mark = pointed.peek().mark; if (mark && Math.abs(x - pressed.current) < 5) p.onOpen?.(mark.id); };

  return (
    <section role="group" class="strip" data-testid={p.testId} aria-label={p.name}>
      <div class="strip-head">{p.head}<Readout probe={p} pointed={pointed} columns={p.columns} stepped={p.stepped ?? false} other={p.compared ? words.stripTools.compared[p.compared.value ?? 'yesterday'] : ''} />{p.note && <span class="hint strip-note">{p.note}</span>}</div>
      <SummaryText summary={summary} tests={p.marks} shown={p.shown} decimals={p.decimals} unit={p.unit} testId={p.testId} lines={p.columns()[0].length > 0} flow={p.stepped ?? false} />
      <div class={`strip-plot ${p.axis ? 'with-axis' : ''} ${p.stepped ? 'low' : ''}`} ref={host} style={p.share ? { height: `${height}px` } : undefined} onPointerDown={e => { pressed.current = e.clientX; }} onClick={e => tapped(e.clientX)} />
    </section>
  );
}
