import { useEffect } from 'preact/hooks';
import type { BoardView } from '../contract.boards';
import { boards } from '../live/boards';
import { usePolled, type Polled } from '../parts/usePolled';

/** A board, asked for anew as soon as the hub tells of another version or tells of it no more. */
export function useBoard(id: string): Polled<BoardView> {
  const polled = usePolled<BoardView>(`/boards/${encodeURIComponent(id)}`);
  const told = boards.value && (boards.value.find(b => b.id === id)?.version ?? 'gone');
  useEffect(() => { if (polled.data && told !== null && told !== polled.data.version) polled.reload(); }, [told]);
  return polled;
}
