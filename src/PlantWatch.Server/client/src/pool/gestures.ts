import type { Signal } from '@preact/signals';
import { serverNow } from '../live/clock';
import { following, panned, zoomed, type Shown } from './window';

/** Where the time axis lies on the page. */
export type Axis = () => { left: number; width: number } | null;

/** Choosing a time: by dragging while `armed`, with Shift, or after a long press; N begins to write without a drag. */
export interface Choosing { armed: () => boolean; choose: (from: number, to: number) => void; write: () => void }

const longPress = 450, still = 8;

/** Mouse, touch and keys on the strips. Drag pans, wheel and pinch zoom, keys do both. Returns how to stop. */
export function gestures(host: HTMLElement, shown: Signal<Shown>, axis: Axis, choosing?: Choosing): () => void {
  const pointers = new Map<number, number>();
  let dragging = false;
  let chosenFrom: number | null = null;
  let press: ReturnType<typeof setTimeout> | undefined;

  const share = (x: number) => { const a = axis(); return a ? Math.max(0, Math.min(1, (x - a.left) / a.width)) : 0.5; };
  const width = () => axis()?.width ?? 1;
  const middle = () => [...pointers.values()].reduce((a, b) => a + b, 0) / pointers.size;
  const spread = () => { const [a, b] = [...pointers.values()]; return a === undefined || b === undefined ? 0 : Math.max(20, Math.abs(a - b)); };

  const timeAt = (x: number) => { const w = shown.peek(); return w.from + (w.to - w.from) * share(x); };
  const beginChoosing = (id: number, x: number) => {
    chosenFrom = timeAt(x);
    host.setPointerCapture(id);
    choosing?.choose(chosenFrom, chosenFrom);
  };

  const down = (e: PointerEvent) => {
    if (e.button !== 0 || (e.target as HTMLElement).closest('button, a, select')) return;
    pointers.set(e.pointerId, e.clientX);
    dragging = false;
    clearTimeout(press);
    if (!choosing || pointers.size > 1) { chosenFrom = null; return; }
    if (e.shiftKey || (choosing.armed() && e.pointerType !== 'touch')) beginChoosing(e.pointerId, e.clientX);
    else if (e.pointerType === 'touch') press = setTimeout(() => { if (pointers.size === 1 && !dragging) beginChoosing(e.pointerId, e.clientX); }, longPress);
  };
  const move = (e: PointerEvent) => {
    if (!pointers.has(e.pointerId)) return;
    if (chosenFrom !== null && pointers.size === 1) { choosing?.choose(chosenFrom, timeAt(e.clientX)); return; }
    if (e.pointerType === 'touch' && Math.abs(e.clientX - middle()) < still && !dragging && pointers.size === 1) return;
    clearTimeout(press);
    const before = { middle: middle(), spread: spread() };
    if (!dragging && pointers.size === 1 && Math.abs(e.clientX - before.middle) < 4) return;
    if (!dragging) { dragging = true; host.setPointerCapture(e.pointerId); host.classList.add('dragging'); }
    pointers.set(e.pointerId, e.clientX);
    const now = serverNow();
    let next = panned(shown.value, (before.middle - middle()) / width(), now);
    if (pointers.size > 1 && before.spread > 0) next = zoomed(next, spread() / before.spread, share(middle()), now);
    shown.value = next;
  };
  const up = (e: PointerEvent) => {
    clearTimeout(press);
    chosenFrom = null;
    pointers.delete(e.pointerId);
    if (pointers.size === 0) host.classList.remove('dragging');
  };
  const wheel = (e: WheelEvent) => {
    // The page scrolls as everywhere until somebody has clicked into the strips, or holds Ctrl.
    if (!e.ctrlKey && !host.contains(document.activeElement)) return;
    e.preventDefault();
    if (Math.abs(e.deltaX) > Math.abs(e.deltaY)) shown.value = panned(shown.value, e.deltaX / width(), serverNow());
    else shown.value = zoomed(shown.value, Math.exp(-Math.max(-120, Math.min(120, e.deltaY)) / 300), share(e.clientX), serverNow());
  };
  // A finger that has begun to choose must neither scroll the page nor call a menu.
  const hold = (e: Event) => { if (chosenFrom !== null) e.preventDefault(); };
  const key = (e: KeyboardEvent) => {
    if (choosing && (e.key === 'n' || e.key === 'N') && !e.ctrlKey && !e.metaKey && !e.altKey && e.target === host) { e.preventDefault(); choosing.write(); return; }
    const next = keyed(e.key, shown.value, serverNow());
    if (!next || e.ctrlKey || e.metaKey || e.altKey || (e.target as HTMLElement).closest('button, a, select, input')) return;
    e.preventDefault();
    shown.value = next;
  };
  const twice = (e: MouseEvent) => { shown.value = zoomed(shown.value, 2, share(e.clientX), serverNow()); };

  host.addEventListener('pointerdown', down);
  host.addEventListener('pointermove', move);
  host.addEventListener('pointerup', up);
  host.addEventListener('pointercancel', up);
  host.addEventListener('wheel', wheel, { passive: false });
  host.addEventListener('touchmove', hold, { passive: false });
  host.addEventListener('contextmenu', hold);
  host.addEventListener('keydown', key);
  host.addEventListener('dblclick', twice);
  return () => {
    clearTimeout(press);
    host.removeEventListener('touchmove', hold);
    host.removeEventListener('contextmenu', hold);
    host.removeEventListener('pointerdown', down);
    host.removeEventListener('pointermove', move);
    host.removeEventListener('pointerup', up);
    host.removeEventListener('pointercancel', up);
    host.removeEventListener('wheel', wheel);
    host.removeEventListener('keydown', key);
    host.removeEventListener('dblclick', twice);
  };
}

/** What a key does to the window; null for keys that are not ours. */
export function keyed(key: string, w: Shown, now: number): Shown | null {
  switch (key) {
    case 'ArrowLeft': return panned(w, -0.1, now);
    case 'ArrowRight': return panned(w, 0.1, now);
    case 'PageUp': return panned(w, -1, now);
    case 'PageDown': return panned(w, 1, now);
    case '+': case '=': return zoomed(w, 1.5, 0.5, now);
    case '-': case '_': return zoomed(w, 1 / 1.5, 0.5, now);
    case 'Home': case 'End': return following(w.to - w.from, now);
    default: return null;
  }
}
