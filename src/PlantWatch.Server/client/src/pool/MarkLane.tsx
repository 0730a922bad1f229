import type { Signal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { MarkView } from '../contract.notes';
import { dayClock } from '../format/zone';
import { zone } from '../live/store';
import { words } from '../words';
import { sizeStep } from './chart';
import { gathered, xOf } from './lanes';
import { MarkSign } from './MarkSign';
import type { Shown } from './window';

const w = words.stripTools.marks;
/** A target of 24 px and a gap that keeps two apart. */
const room = 28;

function named(marks: MarkView[]): string {
  const at = (m: MarkView) => dayClock(m.at, zone.value);
  return marks.length === 1 ? w.one(w.kinds[marks[0]!.kind], marks[0]!.subjectName, at(marks[0]!)) : w.several(marks.length, [...new Set(marks.map(m => w.kinds[m.kind]))].join(', '), at(marks[0]!), at(marks.at(-1)!));
}

/** What happened, over the strips at its time. One stop for the Tab key; the arrows go from mark to mark. */
export function MarkLane({ marks, shown, width, open, onOpen }: { marks: MarkView[]; shown: Signal<Shown>; width: number; open: string | null; onOpen: (marks: MarkView[]) => void }) {
  const host = useRef<HTMLDivElement>(null), at = useRef(0);
  const { from, to } = shown.value;
  const seen = marks.map(item => ({ x: xOf(Date.parse(item.at), from, to, width, sizeStep()), item, t: Date.parse(item.at) })).filter(m => m.t >= from && m.t <= to);
  const clusters = gathered(seen, room);
  at.current = Math.min(at.current, Math.max(0, clusters.length - 1));
  const go = (to: number) => { const pins = host.current?.querySelectorAll<HTMLButtonElement>('button'); at.current = Math.max(0, Math.min((pins?.length ?? 1) - 1, to)); pins?.[at.current]?.focus(); };
  const key = (e: KeyboardEvent) => {
    const next = { ArrowRight: at.current + 1, ArrowLeft: at.current - 1, Home: 0, End: clusters.length - 1 }[e.key];
    if (next === undefined) return;
    e.preventDefault();
    e.stopPropagation();
    go(next);
  };
  return (
    <div class="lane" role="toolbar" aria-label={w.label} ref={host} onKeyDown={key} data-testid="marks-lane">
      {clusters.map((c, i) => (
        <button key={c.items[0]!.id} type="button" class="mark-pin" style={{ left: `${Math.round(c.x) - 12}px` }} tabIndex={i === at.current ? 0 : -1} aria-label={named(c.items)} aria-expanded={c.items.some(m => m.id === open)}
          title={named(c.items)} data-testid={`mark-${c.items.length === 1 ? c.items[0]!.kind : 'several'}`} onFocus={() => { at.current = i; }} onClick={() => onOpen(c.items)}>
          {c.items.length === 1 ? <MarkSign kind={c.items[0]!.kind} /> : <b>{c.items.length}</b>}</button>))}
    </div>
  );
}
