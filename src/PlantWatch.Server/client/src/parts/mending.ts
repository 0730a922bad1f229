import type { Errors } from '../check/build';

const wrong = '[aria-invalid="true"]', marked = `${wrong}, .wrong`, refusals = '.remark, .notice.bad';

/** What is mended in the first marked field: the control that is wrong, or of several the first. */
function firstControl(place: ParentNode): HTMLElement | null {
  const field = place.querySelector<HTMLElement>(marked);
  if (!field || field.matches(wrong)) return field;
  return field.querySelector<HTMLElement>(wrong) ?? field.querySelector<HTMLElement>('input, select, textarea') ?? field.querySelector<HTMLElement>('button');
}

/** The form that somebody is in, to be asked before anything in it is switched off; the whole page where nobody is in one. */
export const formInHand = (): ParentNode => document.activeElement?.closest('form') ?? document;

/** Takes whoever saved to the first field that is to be mended, or else to what was said of the whole: a failed save must not look like nothing. */
export function focusFirstWrong(within: ParentNode = document): void {
  requestAnimationFrame(() => {
    const place = within instanceof Element && !within.isConnected ? document : within;
    const field = firstControl(place), found = field ?? place.querySelector<HTMLElement>(refusals);
    if (found && !field) found.tabIndex = -1;
    found?.focus();
  });
}

/** A remark stays until its field is changed. */
export const stillSaid = (errors: Errors, changed: (field: string) => boolean): Errors => Object.fromEntries(Object.entries(errors).filter(([field]) => !changed(field)));

/** Fields that are marked; what is said of the whole marks none. */
export const fieldsOf = (errors: Errors): number => Object.keys(errors).filter(k => k !== 'form' && k !== '').length;
