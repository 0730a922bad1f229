import type { ComponentChildren } from 'preact';
import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { words } from '../words';

const w = words.know;

/** Where a number comes from, how old it is, how sure it is, what it means, and by which source. What is null is not said. */
export interface Known { from: ComponentChildren; age?: ComponentChildren; sure?: ComponentChildren; means?: ComponentChildren; source?: ComponentChildren }

const parts = ['from', 'age', 'sure', 'means', 'source'] as const;

/** Beside its button, on the screen whatever the button's place. */
function place(button: HTMLElement, body: HTMLElement): void {
  const at = button.getBoundingClientRect(), edge = 8, wide = document.documentElement.clientWidth;
  body.style.left = `${Math.max(edge, Math.min(at.left, wide - body.offsetWidth - edge))}px`;
  const below = at.bottom + 6, above = at.top - body.offsetHeight - 6;
  body.style.top = `${below + body.offsetHeight > innerHeight - edge && above > edge ? above : Math.max(edge, Math.min(below, innerHeight - body.offsetHeight - edge))}px`;
}

/**
 * The answer to "how do we know?", behind one quiet sign after the number. It is worked out when it is asked for, closes with Escape, with a
 * tap beside it, and when the page scrolls away under it.
 */
export function Know({ of, tell, testId }: { of: string; tell: () => Known; testId?: string | undefined }) {
  const id = useId(), button = useRef<HTMLButtonElement>(null), body = useRef<HTMLDivElement>(null);
  const [open, setOpen] = useState(false);
  useEffect(() => {
    const b = body.current!;
    const toggled = (e: Event) => setOpen((e as ToggleEvent).newState === 'open');
    b.addEventListener('toggle', toggled);
    return () => b.removeEventListener('toggle', toggled);
  }, []);
  useEffect(() => {
    if (!open) return;
    place(button.current!, body.current!);
    const away = (e: Event) => { if (e.target === document) body.current?.hidePopover(); };
    addEventListener('scroll', away, true);
    return () => removeEventListener('scroll', away, true);
  }, [open]);
  const known = open ? tell() : null;
  return <>
    <button ref={button} type="button" class="know" popoverTarget={id} aria-label={w.ask(of)} title={w.ask(of)} data-testid={testId ? `know-${testId}` : undefined}>
      <svg viewBox="0 0 16 16" width="14" height="14" aria-hidden="true" focusable="false"><circle cx="8" cy="8" r="6.5" /><path d="M8 7.2v4" /><path d="M8 4.6v.4" /></svg></button>
    <div ref={body} id={id} popover="auto" class="know-body" role="dialog" tabIndex={open ? 0 : -1} aria-label={w.ask(of)} data-testid={open && testId ? `known-${testId}` : undefined}>
      {known && <><p class="know-head"><b>{of}</b> <span class="hint">{w.title}</span></p>
        <dl>{parts.filter(p => known[p]).map(p => <div key={p}><dt>{w.parts[p]}</dt><dd>{known[p]}</dd></div>)}</dl></>}
    </div>
  </>;
}
