import type { RefObject } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';

const fields = 'input, select, textarea';

/** The first thing to fill in within a part of the page, or its first button. */
export const focusFirst = (within: Element | null) => (within?.querySelector<HTMLElement>(fields) ?? within?.querySelector<HTMLElement>('button'))?.focus();

export interface ComeAndGo {
  /** The part of the page that opens and closes; takes the focus itself where what opened it is gone. */
  host: RefObject<HTMLDivElement | null>;
  onKeyDown: (e: KeyboardEvent) => void;
}

/**
 * Focus goes into what was opened and back to what opened it, which is found again by its data-opens: nobody who works by keyboard is left at the top of the page.
 * @param open what is open, by name; null for nothing.
 * @param close what Escape does.
 */
export function useComeAndGo(open: string | null, close: () => void): ComeAndGo {
  const host = useRef<HTMLDivElement>(null), before = useRef<string | null>(null);
  useLayoutEffect(() => {
    const was = before.current;
    before.current = open;
    if (open !== null) focusFirst(host.current);
    else if (was !== null) (host.current?.querySelector<HTMLElement>(`[data-opens="${was}"]`) ?? host.current)?.focus();
  }, [open]);
  const onKeyDown = (e: KeyboardEvent) => {
    if (open === null || e.key !== 'Escape') return;
    e.stopPropagation();
    close();
  };
  return { host, onKeyDown };
}
