/** Puts the focus on a field once the page is drawn anew: a button that goes with its press would take it along. */
export function focusOn(name: string): void {
  requestAnimationFrame(() => document.getElementById('f-' + name)?.focus());
}
