import { computed } from '@preact/signals';
import type { NoteRequest, NoteView } from '../contract.notes';
import { makeOutbox } from './make';

const made = makeOutbox<NoteRequest, NoteView>('plantwatch.notes.', '/notes', answer => answer.id);
export const { box: notes, kept: keptNotes, flush: flushNotes, start: startNotes } = made;

/** Rises when the server has taken one, whichever tab sent it, so that the page asks for them anew. */
export const notesTaken = computed(() => [...made.outcomes.value.values()].filter(o => o.kind === 'answered').length);
