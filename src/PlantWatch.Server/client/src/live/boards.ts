import { signal } from '@preact/signals';
import type { BoardLine } from '../contract.boards';

/** The boards there are, as the hub tells them; null before it has. */
export const boards = signal<BoardLine[] | null>(null);
