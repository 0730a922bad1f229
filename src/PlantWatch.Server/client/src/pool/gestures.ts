import type { Signal } from '@preact/signals';
import { serverNow } from '../live/clock';
import { following, panned, zoomed, type Shown } from './window';

/** Where the time axis lies on the page. */
export type Axis = () => { left: number; width: number } | null;

/** Mouse, touch and keys on the strips. Drag pans, wheel and pinch zoom, keys do both. Returns how to stop. */
export function gestures(host: HTMLElement, shown: Signal<Shown>, axis: Axis): () => void {
  const pointers = new Map<number, number>();
  let dragging = false;

  const share = (x: number) => { const a = axis(); return a ? Math.max(0, Math.min(1, (x - a.left) / a.width)) : 0.5; };
  const width = () => axis()?.width ?? 1;
  const middle = () => [...pointers.values()].reduce((a, b) => a + b, 0) / pointers.size;
  const spread = () => { const [a, b] = [...pointers.values()]; return a === undefined || b === undefined ? 0 : Math.max(20, Math.abs(a - b)); };

  const down = (e: PointerEvent) => {
    if (e.button !== 0 || (e.target as HTMLElement).closest('button, a, select')) return;
    pointers.set(e.pointerId, e.clientX);
    dragging = false;
  };
  const move = (e: PointerEvent) => {
    if (!pointers.has(e.pointerId)) return;
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
  const key = (e: KeyboardEvent) => {
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
  host.addEventListener('keydown', key);
  host.addEventListener('dblclick', twice);
  return () => {
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
