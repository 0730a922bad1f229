import { signal } from '@preact/signals';
import { measures } from '../live/store';
import { checks, type CheckItem } from '../outbox/checks';
import { setWho } from '../parts/person';
import { go } from '../router';
import { words } from '../words';
import { draft, draftOf, edit, isTouched } from './draft';

/** A refused check that is on its way back into the form, with its refusal; the form takes it up when it opens. */
export const toMend = signal<CheckItem | null>(null);

/** A refused check goes back into the form, where it can be mended, out of the outbox, so that it exists once. False when what stands in the form is to stay. */
export function mend(item: CheckItem): boolean {
  if (isTouched(draft.value) && !confirm(words.check.clearSure)) return false;
  edit(draftOf(item.request, measures));
  setWho(item.request.who);
  checks.drop(item.id);
  toMend.value = item;
  go('check');
  return true;
}
