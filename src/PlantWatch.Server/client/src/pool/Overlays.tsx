import { useSignal, type Signal } from '@preact/signals';
import type { MarkView } from '../contract.notes';
import { keptNotes } from '../outbox/notes';
import { words } from '../words';
import { sizeStep } from './chart';
import { plotLeft, plotRight, xOf } from './lanes';
import { MarkLane } from './MarkLane';
import { MarkPanel } from './MarkPanel';
import { NoteLane } from './NoteLane';
import { draftOf, mending, type NoteDraft } from './noteDraft';
import { NotePanel } from './NotePanel';
import { laid, type LaidNote } from './notes';
import { useMarks, useNotes } from './useChecks';
import type { Shown } from './window';

/** What is opened: marks by their ids, or a note. */
export interface Opened { marks: string[]; note: string | null }
export const nothingOpened: Opened = { marks: [], note: null };

export function usePast(poolId: string | null, shown: Signal<Shown>, fresh: string): { marks: MarkView[]; more: boolean; failed: boolean; notes: LaidNote[] } {
  const past = useMarks(poolId, shown, fresh), written = useNotes(poolId, shown);
  return { ...past, failed: past.failed || written.failed, notes: poolId === null ? [] : laid(written.notes, keptNotes.value, poolId) };
}

/** Where the focus came from, so that it goes back there when what was opened closes. */
function useReturn() {
  const from = useSignal<HTMLElement | null>(null);
  return { leave: () => { from.value = document.activeElement as HTMLElement | null; }, back: () => { const to = from.value; requestAnimationFrame(() => to?.isConnected && to.focus()); } };
}

/** The lanes over the strips and what is opened of them. */
export function Lanes({ past, poolId, shown, width, opened, draft }: {
  past: ReturnType<typeof usePast>; poolId: string; shown: Signal<Shown>; width: number; opened: Signal<Opened>; draft: Signal<NoteDraft | null>;
}) {
  const { leave, back } = useReturn();
  const open = opened.value, marks = past.marks.filter(m => open.marks.includes(m.id)), note = past.notes.find(n => n.id === open.note) ?? null;
  const close = () => { opened.value = nothingOpened; back(); };
  const toggle = (next: Opened) => {
    const same = JSON.stringify(next) === JSON.stringify(open);
    if (same) return close();
    leave();
    opened.value = next;
  };
  const mend = (d: NoteDraft) => { draft.value = d; opened.value = nothingOpened; };
  const seen = past.marks.some(m => Date.parse(m.at) >= shown.value.from && Date.parse(m.at) <= shown.value.to);
  return (
    <div class="lanes">
      {seen && <MarkLane marks={past.marks} shown={shown} width={width} open={open.marks[0] ?? null} onOpen={m => toggle({ marks: m.map(x => x.id), note: null })} />}
      <NoteLane notes={past.notes} shown={shown} width={width} open={open.note} onOpen={n => toggle({ marks: [], note: n.id })} />
      {(past.more || past.failed) && <p class="hint lane-words">{past.failed ? words.stripTools.marks.failed : words.stripTools.marks.more}</p>}
      {marks.length > 0 && <MarkPanel marks={marks} poolId={poolId} close={close} />}
      {note && <NotePanel laid={note} close={close} onMend={retract => { if (note.note) mend(mending(note.note, retract)); }}
        onEdit={() => { if (note.item) mend(draftOf(note.item.request, past.notes.find(n => n.note?.id === note.item?.request.corrects)?.note ?? null)); }} />}
    </div>
  );
}

/** The time that a note is being written about, over all strips. */
export function Chosen({ draft, shown, width }: { draft: Signal<NoteDraft | null>; shown: Signal<Shown>; width: number }) {
  const d = draft.value, { from, to } = shown.value;
  if (!d || d.retract || d.to < from || d.from > to || width === 0) return null;
  const step = sizeStep(), left = Math.max(step * plotLeft, xOf(d.from, from, to, width, step)), right = Math.min(width - step * plotRight, Math.max(xOf(d.to, from, to, width, step), xOf(d.from, from, to, width, step) + 3));
  return <div class="chosen-time" aria-hidden="true" data-testid="chosen-time" style={{ left: `${left}px`, width: `${Math.max(3, right - left)}px` }} />;
}
