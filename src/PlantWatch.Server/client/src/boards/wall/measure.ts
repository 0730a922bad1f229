import type { Box, Span } from './fit';

/** What is read as one and is not cut: a card, a strip, a line. */
const whole = 'article, li, p, table, figure, dl, .strip, .of-pool';
const heading = 'h2, h3, h4';

const pieces = (e: Element): Element[] => (e.matches(whole) || e.matches(heading) || e.children.length === 0 ? [e] : [...e.children].flatMap(pieces));

/** The tiles of a flow with their parts, measured as they are laid out, whatever the flow is moved and drawn smaller by meanwhile. */
export function boxesOf(flow: HTMLElement): Box[] {
  const origin = flow.getBoundingClientRect(), drawn = origin.width / flow.offsetWidth || 1;
  const spanOf = (e: Element): Span => { const r = e.getBoundingClientRect(); return { top: Math.round((r.top - origin.top) / drawn), bottom: Math.round((r.bottom - origin.top) / drawn) }; };
  return [...flow.children].map(slot => {
    const parts: Span[] = [];
    let head: Span | null = null;
    for (const e of pieces(slot)) {
      const span = spanOf(e);
      // For ears only, or empty.
      if (span.bottom - span.top < 2) continue;
      if (e.matches(heading)) { head ??= span; continue; }
      // A heading goes with what follows it.
      parts.push(head ? { top: head.top, bottom: span.bottom } : span);
      head = null;
    }
    return { ...spanOf(slot), parts: head ? [...parts, head] : parts };
  });
}
