import type { NoteRequest, NoteView } from '../contract.notes';
import { words } from '../words';

/** A note while it is written. Times in Unix milliseconds: what was dragged is kept to the moment, whatever the field can show. */
export interface NoteDraft { from: number; to: number; text: string; why: string; mends: NoteView | null; retract: boolean }

export const newDraft = (from: number, to: number): NoteDraft => ({ from: Math.min(from, to), to: Math.max(from, to), text: '', why: '', mends: null, retract: false });

export const mending = (note: NoteView, retract: boolean): NoteDraft => ({ from: Date.parse(note.from), to: Date.parse(note.to), text: note.text, why: '', mends: note, retract });

/** A draft again out of what the server refused. */
export const draftOf = (r: NoteRequest, mends: NoteView | null): NoteDraft => ({ from: Date.parse(r.from), to: Date.parse(r.to), text: r.text, why: r.why ?? '', mends, retract: r.retracted });

const tolerance = 5 * 60_000, longest = 366 * 86_400_000;

/** What keeps it from being sent, by field; the server judges the same. */
export function objections(d: { from: number | null; to: number | null; text: string; why: string; mends: unknown; retract: boolean }, by: string, now: number): Record<string, string> {
  const w = words.stripTools.note, out: Record<string, string> = {};
  if (d.from === null) out['from'] = w.needTime;
  if (d.to === null) out['to'] = w.needTime;
  if (d.from !== null && d.to !== null) {
    if (d.to < d.from) out['to'] = w.endsFirst;
    else if (d.to - now > tolerance) out['to'] = w.toCome;
    else if (d.to - d.from > longest) out['to'] = w.tooLong;
  }
  if (!d.text.trim()) out['text'] = w.needText;
  if (d.mends && !d.why.trim()) out['why'] = w.needWhy;
  if (!by.trim()) out['by'] = w.needBy;
  return out;
}

export const requestOf = (d: NoteDraft, poolId: string, by: string): NoteRequest => ({
  poolId, from: new Date(d.from).toISOString(), to: new Date(d.to).toISOString(), text: d.text.trim(), by: by.trim(), corrects: d.mends?.id ?? null, why: d.mends ? d.why.trim() : null, retracted: d.retract,
});
