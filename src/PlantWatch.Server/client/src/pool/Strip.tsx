import { useSignal, useSignalEffect, type Signal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type uPlot from 'uplot';
import type { LimitBand } from '../contract';
import { zone } from '../live/store';
import { paint } from '../parts/theme';
import { feed, makeChart, sizeStep } from './chart';
import type { Columns } from './columns';
import { readInk } from './ink';
import type { Happening, Mark } from './marks';
import { Readout, type Pair, type Pointed } from './Readout';
import type { Shade } from './shades';
import type { Shown } from './window';

export interface StripProps {
  name: string; head: ComponentChildren; decimals: number; unit: string; limit: LimitBand | undefined; marks: Mark[]; columns: () => Columns; note: string;
  shown: Signal<Shown>; cursor: Signal<number | null>; width: number; axis: boolean; stepped?: boolean; testId: string;
  /** Where the two lines are not the raw and the corrected one: what each is called. */
  pair?: Pair | undefined;
  happenings?: Happening[] | undefined; shades?: (() => Shade[]) | undefined;
  /** At least so long between two drawings, in milliseconds; as fast as the screen when left out. */
  pace?: number | undefined;
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
  const pointed = useSignal<Pointed>({ index: null, mark: null, happening: null });
  const frame = useRef(0);
  const later = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const drawn = useRef(0);
  const paintNow = () => {
    cancelAnimationFrame(frame.current);
    frame.current = requestAnimationFrame(() => { drawn.current = performance.now(); if (chart.current) feed(chart.current, p.columns(), p.shown.peek()); });
  };
  const draw = () => {
    const wait = (p.pace ?? 0) - (performance.now() - drawn.current);
    if (wait <= 0) paintNow();
    else if (later.current === undefined) later.current = setTimeout(() => { later.current = undefined; paintNow(); }, wait);
  };
  p.bind(draw);

  const step = sizeStep(), height = step * ((p.stepped ? 54 : 132) + (p.axis ? 28 : 0));
  useEffect(() => {
    if (!host.current || p.width < 80) return;
    const u = makeChart({
      width: p.width, height, axis: p.axis, zone: zone.peek(), decimals: p.decimals, limit: p.limit, stepped: p.stepped ?? false, ink: readInk(host.current), marks: () => marks.current,
      happenings: () => happenings.current, shades: () => shades.current?.() ?? [],
      onCursor: (index, left) => {
        const near = (m: { t: number }) => left >= 0 && Math.abs(u.valToPos(m.t, 'x') - left) < 8;
        pointed.value = { index, mark: marks.current.find(near) ?? null, happening: happenings.current.find(near)?.text ?? null };
        p.cursor.value = left < 0 ? null : u.posToVal(left, 'x');
      },
    }, p.columns(), p.shown.peek(), host.current);
    chart.current = u;
    draw();
    return () => { clearTimeout(later.current); later.current = undefined; cancelAnimationFrame(frame.current); chart.current = null; u.destroy(); };
  }, [p.width, p.axis, p.limit, p.stepped, zone.value, paint.value, step]);

  useEffect(() => { marks.current = p.marks; happenings.current = p.happenings ?? none; draw(); }, [p.marks, p.happenings]);
  useSignalEffect(() => { p.shown.value; draw(); });

  return (
    <section role="group" class="strip" data-testid={p.testId} aria-label={p.name}>
      <div class="strip-head">{p.head}<Readout probe={p} pointed={pointed} columns={p.columns} stepped={p.stepped ?? false} />{p.note && <span class="hint strip-note">{p.note}</span>}</div>
      <div class={`strip-plot ${p.axis ? 'with-axis' : ''} ${p.stepped ? 'low' : ''}`} ref={host} />
    </section>
  );
}
