import { useLayoutEffect, useRef } from 'preact/hooks';
import type { NoteVersion } from '../contract.notes';
import { fullClock } from '../format/zone';
import { zone } from '../live/store';
import { notes } from '../outbox/notes';
import { WarnGlyph } from '../parts/Glyph';
import { words } from '../words';
import { spanOf, stateOf } from './NoteLane';
import type { LaidNote } from './notes';

const w = words.stripTools.note;
const times = (v: NoteVersion) => spanOf({ from: Date.parse(v.from), to: Date.parse(v.to) });

/** One note: what it says, by whom and when, what it said before, and what may be done with it. */
export function NotePanel({ laid, close, onMend, onEdit }: { laid: LaidNote; close: () => void; onMend: (retract: boolean) => void; onEdit: () => void }) {
  const host = useRef<HTMLElement>(null);
  useLayoutEffect(() => { host.current?.focus(); }, [laid.id]);
  const { note, item } = laid;
  return (
    <section class="mark-panel" ref={host} tabIndex={-1} aria-label={w.label(laid.text, spanOf(laid), stateOf(laid))} data-testid="note-panel" data-state={laid.state} onKeyDown={e => { if (e.key === 'Escape') { e.stopPropagation(); close(); } }}>
      <div>
        <p><b>{spanOf(laid)}</b>{stateOf(laid) && <>, <b>{stateOf(laid)}</b></>} <span class="hint">{note ? w.saidAt(note.by, fullClock(note.saidAt, zone.value)) : item?.request.by}</span></p>
        <p class={`pre ${laid.state === 'retracted' ? 'struck' : ''}`}>{laid.text}</p>
        {note?.why && <p class="hint">{note.why}</p>}
        {note && note.before.length > 0 && <details><summary>{w.earlier}</summary><ul class="plain">{note.before.map(b => <li key={b.id}><span class="hint">{times(b)}, {w.saidAt(b.by, fullClock(b.saidAt, zone.value))}{b.why && `: ${b.why}`}</span> <span class="pre">{b.text}</span></li>)}</ul></details>}
        {item?.refusal && <p class="mark"><WarnGlyph /><span>{item.refusal.errors.map(e => e.text).join(' ') || item.refusal.title}</span></p>}
      </div>
      <div class="inline">
        {note && !note.retracted && <><button type="button" class="slim" onClick={() => onMend(false)} data-testid="note-correct">{w.correcting}</button><button type="button" class="slim" onClick={() => onMend(true)} data-testid="note-retract">{w.retracting}</button></>}
        {item?.refusal && <><button type="button" class="slim" onClick={onEdit}>{w.edit}</button><button type="button" class="slim" onClick={() => { if (confirm(w.dropSure)) { notes.drop(item.id); close(); } }}>{w.drop}</button></>}
        <button type="button" class="slim" onClick={close} data-testid="close-note">{words.stripTools.marks.close}</button>
      </div>
    </section>
  );
}
