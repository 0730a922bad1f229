import type { NoteRequest, NoteView } from '../contract.notes';
import type { Item } from '../outbox/outbox';

/** The time that a note speaks of, as it is painted over the strips. */
export interface NoteSpan { from: number; to: number }

export type NoteState = '' | 'retracted' | 'corrected' | 'waiting' | 'refused';

/** A note as it lies over the strips: of the record, or still on this device. */
export interface LaidNote extends NoteSpan { id: string; text: string; state: NoteState; note: NoteView | null; item: Item<NoteRequest> | null }

/** Notes of the record and of the device, oldest first. What waits here to correct one stands in its place; what was refused stands beside it. */
export function laid(notes: readonly NoteView[], kept: readonly Item<NoteRequest>[], poolId: string): LaidNote[] {
  const known = new Set(notes.flatMap(n => [n.id, ...n.before.map(b => b.id)]));
  const mine = kept.filter(i => i.request.poolId === poolId && !known.has(i.id)).map((i): LaidNote => ({
    id: i.id, from: Date.parse(i.request.from), to: Date.parse(i.request.to), text: i.request.text, state: i.refusal ? 'refused' : 'waiting', note: null, item: i }));
  const mending = new Set(mine.filter(m => m.state === 'waiting').map(m => m.item!.request.corrects));
  return [...notes.filter(n => !mending.has(n.id)).map((n): LaidNote => ({ id: n.id, from: Date.parse(n.from), to: Date.parse(n.to), text: n.text, state: n.retracted ? 'retracted' : n.before.length > 0 ? 'corrected' : '', note: n, item: null })), ...mine]
    .sort((a, b) => a.from - b.from || a.to - b.to);
}

/** What is painted over the strips: not what was taken back. */
export const painted = (notes: readonly LaidNote[]): NoteSpan[] => notes.filter(n => n.state !== 'retracted' && n.state !== 'refused' && !n.item?.request.retracted);
