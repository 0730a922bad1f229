import { signal } from '@preact/signals';
import { recall, remember } from '../api/kept';

export type Theme = 'auto' | 'light' | 'dark';
const kept = recall('theme');
export const theme = signal<Theme>(kept === 'light' || kept === 'dark' ? kept : 'auto');

/** Rises when the colours change, so that what is painted on a canvas is painted again. */
export const paint = signal(0);

let lent: Theme | null = null;

function apply(): void {
  const next = lent ?? theme.peek();
  if (next === 'auto') delete document.documentElement.dataset['theme'];
  else document.documentElement.dataset['theme'] = next;
  paint.value++;
}

export function setTheme(next: Theme): void {
  theme.value = next;
  remember('theme', next === 'auto' ? null : next);
  apply();
}

/** Another theme for a while, which is not remembered; null gives back the chosen one. */
export function lendTheme(next: Theme | null): void {
  if (next === lent) return;
  lent = next;
  apply();
}

matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => { paint.value++; });
