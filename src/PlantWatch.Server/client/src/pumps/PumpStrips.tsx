import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { LimitBand } from '../contract';
import type { PumpPageView } from '../contract.pump';
import { allProbes, headingOf, limitsOfPool } from '../live/store';
import { limitOf } from '../parts/beyond';
import type { Columns } from '../pool/columns';
import type { Happening, Mark } from '../pool/marks';
import { Strip } from '../pool/Strip';
import type { Shown } from '../pool/window';
import { words } from '../words';

const w = words.pumpPage;
const noMarks: Mark[] = [];
type Line = (number | null)[];

export interface PumpStripsProps { page: PumpPageView }

/** Beside a broken line stands the solid one; alone it is the line. */
function columnsOf(t: number[], solid: Line, broken: Line | null): Columns {
  const none = t.map(() => null);
  return broken?.some(v => v !== null) ? [t, none, none, broken, solid] : [t, none, none, solid, none];
}

const rows = (page: PumpPageView) => {
  const { course: c } = page, probe = c.probeId ? allProbes.value.get(c.probeId) : undefined;
  const known = (line: Line | null): line is Line => line !== null && line.some(v => v !== null);
  return [
    ...(known(c.driven) ? [{ id: 'driven', name: w.driven as ComponentChildren, label: w.driven, solid: c.driven, broken: c.usual, pair: { solid: words.inText(w.driven), broken: w.usual }, unit: w.unit, decimals: 2, limit: undefined as LimitBand | undefined }] : []),
    ...(probe && known(c.seen) ? [{ id: 'value', name: headingOf(probe, []), label: headingOf(probe, []), solid: c.seen, broken: c.expected, pair: { solid: w.seen, broken: w.expected }, unit: probe.unit, decimals: probe.decimals, limit: limitOf(limitsOfPool(probe.poolId), probe.measurand) }] : []),
    ...(known(c.tank) ? [{ id: 'tank', name: w.tank, label: w.tank, solid: c.tank, broken: null, pair: { solid: words.inText(w.tank), broken: '' }, unit: 'L', decimals: 1, limit: undefined }] : []),
  ];
};

/** What a pump was driven to, the value that its controller holds, and its tank, on one axis. */
export default function PumpStrips({ page }: PumpStripsProps) {
  const t = page.course.t;
  const shown = useSignal<Shown>({ from: 0, to: 1, follow: false });
  const cursor = useSignal<number | null>(null);
  const host = useRef<HTMLDivElement>(null);
  const redraws = useRef<Record<string, () => void>>({});
  const [width, setWidth] = useState(0);
  const held = useRef<Record<string, Columns>>({});
  const happenings = useMemo<Happening[]>(() => page.marks.map(m => ({ t: Date.parse(m.at), text: `${w.kinds[m.kind]}: ${m.text}` })), [page.marks]);
  const all = rows(page);
  for (const r of all) held.current[r.id] = columnsOf(t, r.solid, r.broken);
  useEffect(() => {
    shown.value = { from: t[0] ?? 0, to: (t.at(-1) ?? 0) + 300_000, follow: false };
    for (const redraw of Object.values(redraws.current)) redraw();
  }, [page]);
  useEffect(() => {
    const h = host.current!;
    const watch = new ResizeObserver(() => setWidth(Math.floor(h.clientWidth)));
    watch.observe(h);
    return () => watch.disconnect();
  }, []);
  return (
    <div class="pump-strips" ref={host} data-testid="pump-strips">
      {all.length === 0 && <p class="empty">{w.noCourse}</p>}
      {width > 0 && all.map((r, i) => (
        <Strip key={r.id + (r.broken ? 'b' : '')} name={r.label} testId={`pump-strip-${r.id}`} decimals={r.decimals} unit={r.unit} pair={r.pair} limit={r.limit} marks={noMarks} columns={() => held.current[r.id]!} happenings={happenings}
          note="" shown={shown} cursor={cursor} width={width} axis={i === all.length - 1} bind={f => { redraws.current[r.id] = f; }} head={<h3>{r.name}{r.unit && r.unit !== 'pH' ? <span class="unit"> {r.unit}</span> : null}</h3>} />))}
    </div>
  );
}
