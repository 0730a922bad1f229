import type { Signal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { query } from '../api/http';
import type { CheckAnswer } from '../contract';
import type { MarksView, MarkView } from '../contract.notes';
import type { NoteView } from '../contract.notes';
import { notesTaken } from '../outbox/notes';
import { usePolled } from '../parts/usePolled';
import { useAround } from './useAround';
import type { Shown } from './window';

const none: never[] = [];
const minute = 60_000;

/** Keeps the last answer while another time is asked for: nothing flickers. */
function useKept<T>(path: string | null, fresh: string, every?: number): { kept: T | null; failed: boolean } {
  const { data, reload, failed } = usePolled<T>(path, every);
  const kept = useRef<T | null>(null), before = useRef(fresh);
  useEffect(() => { if (before.current !== fresh) reload(); before.current = fresh; }, [fresh]);
  if (data) kept.current = data;
  return { kept: kept.current, failed };
}

const range = (a: { from: number; to: number }) => ({ from: new Date(a.from).toISOString(), to: new Date(a.to).toISOString() });

/** The tests around the window; asked for anew when it has moved out of what was asked, or `fresh` changes. */
export function useChecks(poolId: string | null, shown: Signal<Shown>, fresh: string): CheckAnswer[] {
  const around = useAround(shown);
  return useKept<CheckAnswer[]>(poolId === null ? null : '/checks' + query({ pool: poolId, ...range(around), limit: 1000 }), fresh).kept ?? none;
}

/** What happened around the window. */
export function useMarks(poolId: string | null, shown: Signal<Shown>, fresh: string): { marks: MarkView[]; more: boolean; failed: boolean } {
  const around = useAround(shown);
  const { kept, failed } = useKept<MarksView>(poolId === null ? null : `/pools/${encodeURIComponent(poolId)}/marks` + query(range(around)), fresh, minute);
  return { marks: kept?.marks ?? none, more: kept?.more ?? false, failed: failed && kept === null };
}

/** The notes that touch the time around the window. */
export function useNotes(poolId: string | null, shown: Signal<Shown>): { notes: NoteView[]; failed: boolean } {
  const around = useAround(shown);
  const { kept, failed } = useKept<NoteView[]>(poolId === null ? null : '/notes' + query({ pool: poolId, ...range(around) }), `${notesTaken.value}`, minute);
  return { notes: kept ?? none, failed: failed && kept === null };
}
