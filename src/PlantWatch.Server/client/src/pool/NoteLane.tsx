import type { Signal } from '@preact/signals';
import { dayClock } from '../format/zone';
import { zone } from '../live/store';
import { words } from '../words';
import { sizeStep } from './chart';
import { inRows, plotLeft, plotRight, xOf } from './lanes';
import type { LaidNote } from './notes';
import type { Shown } from './window';

const w = words.stripTools.note;
const rows = 3, least = 24, high = 26;

export const spanOf = (n: { from: number; to: number }) => w.span(dayClock(n.from, zone.value), dayClock(n.to, zone.value));
export const stateOf = (n: LaidNote) => (n.state === 'refused' ? w.refused : n.state ? w[n.state] : '');

/** The notes over the strips, each from where its time begins to where it ends. */
export function NoteLane({ notes, shown, width, open, onOpen }: { notes: LaidNote[]; shown: Signal<Shown>; width: number; open: string | null; onOpen: (note: LaidNote) => void }) {
  const { from, to } = shown.value, step = sizeStep(), start = step * plotLeft, stop = width - step * plotRight;
  const seen = notes.filter(n => n.to >= from && n.from <= to).map(n => {
    const left = Math.max(start, xOf(n.from, from, to, width, step)), end = Math.min(stop, xOf(n.to, from, to, width, step));
    // A moment still has the room of a finger, and stays inside.
    const right = Math.max(end, left + least), over = Math.max(0, right - stop);
    return { n, left: left - over, right: right - over };
  }).sort((a, b) => a.left - b.left);
  if (seen.length === 0) return null;
  const row = inRows(seen, rows), used = Math.max(...row.map(r => (r ?? -1) + 1)), hidden = row.filter(r => r === null).length;
  return (
    <div class="lane notes-lane" role="group" aria-label={w.lane} style={{ height: `${used * high + 2}px` }} data-testid="notes-lane">
      {seen.map(({ n, left, right }, i) => row[i] === null ? null : (
        <button key={n.id} type="button" class={`note-bar n-${n.state || 'plain'}`} style={{ left: `${left}px`, width: `${right - left}px`, top: `${row[i]! * high}px` }} aria-expanded={open === n.id} aria-label={w.label(n.text, spanOf(n), stateOf(n))} title={n.text}
          data-testid="note-bar" data-state={n.state} onClick={() => onOpen(n)}><span>{stateOf(n) && <b>{stateOf(n)}: </b>}{n.text}</span></button>))}
      {hidden > 0 && <span class="hint lane-more">{w.moreRows(hidden)}</span>}
    </div>
  );
}
