import { signal } from '@preact/signals';
import { recall, remember } from '../api/kept';

/** Who works at this device: remembered, and always in sight where it is used, since devices are shared. */
export const who = signal<string>(recall('who') ?? '');

export function setWho(name: string): void {
  who.value = name;
  remember('who', name);
}
