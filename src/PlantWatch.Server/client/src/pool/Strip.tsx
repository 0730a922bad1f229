import { useSignal, useSignalEffect, type Signal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type uPlot from 'uplot';
import type { LimitPlan } from '../contract';
import { zone } from '../live/store';
import { paint } from '../parts/theme';
import { feed, makeChart } from './chart';
import type { Columns } from './columns';
import { readInk } from './ink';
import type { Mark } from './marks';
import { Readout, type Pointed } from './Readout';
import type { Shown } from './window';

export interface StripProps {
  name: string; head: ComponentChildren; decimals: number; unit: string; limit: LimitPlan | undefined; marks: Mark[]; columns: () => Columns; note: string;
  shown: Signal<Shown>; cursor: Signal<number | null>; width: number; axis: boolean; stepped?: boolean; testId: string;
  /** Given the function that draws anew. */
  bind: (redraw: () => void) => void;
}

/** One measurand over time: a heading with the readout and the chart under it. */
export function Strip(p: StripProps) {
  const host = useRef<HTMLDivElement>(null);
  const chart = useRef<uPlot | null>(null);
  const marks = useRef(p.marks);
  const pointed = useSignal<Pointed>({ index: null, mark: null });
  const frame = useRef(0);
  const draw = () => {
    cancelAnimationFrame(frame.current);
    frame.current = requestAnimationFrame(() => { if (chart.current) feed(chart.current, p.columns(), p.shown.peek()); });
  };
  p.bind(draw);

  const height = (p.stepped ? 54 : 132) + (p.axis ? 28 : 0);
  useEffect(() => {
    if (!host.current || p.width < 80) return;
    const u = makeChart({
      width: p.width, height, axis: p.axis, zone: zone.peek(), decimals: p.decimals, limit: p.limit, stepped: p.stepped ?? false, ink: readInk(host.current), marks: () => marks.current,
      onCursor: (index, left) => {
        const near = left < 0 ? undefined : marks.current.find(m => Math.abs(u.valToPos(m.t, 'x') - left) < 8);
        pointed.value = { index, mark: near ?? null };
        p.cursor.value = left < 0 ? null : u.posToVal(left, 'x');
      },
    }, p.columns(), p.shown.peek(), host.current);
    chart.current = u;
    draw();
    return () => { cancelAnimationFrame(frame.current); chart.current = null; u.destroy(); };
  }, [p.width, p.axis, p.limit, p.stepped, zone.value, paint.value]);

  useEffect(() => { marks.current = p.marks; draw(); }, [p.marks]);
  useSignalEffect(() => { p.shown.value; draw(); });

  return (
    <section class="strip" data-testid={p.testId} aria-label={p.name}>
      <div class="strip-head">{p.head}<Readout probe={p} pointed={pointed} columns={p.columns} stepped={p.stepped ?? false} />{p.note && <span class="hint strip-note">{p.note}</span>}</div>
      <div class={`strip-plot ${p.axis ? 'with-axis' : ''} ${p.stepped ? 'low' : ''}`} ref={host} />
    </section>
  );
}
