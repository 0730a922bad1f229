import { signal } from '@preact/signals';
import { recall, remember } from '../api/kept';

/** The document in hand: typed once for a whole pack, and always in sight where it is used. */
export const documentInHand = signal<string>(recall('document') ?? '');

export function setDocument(text: string): void {
  documentInHand.value = text;
  remember('document', text);
}
