import type { Errors } from '../check/build';
import { words } from '../words';
import { fieldsOf } from './mending';

/** Beside the button that saves: how many fields are to be mended before it does. */
export function MendLine({ errors }: { errors: Errors }) {
  const n = fieldsOf(errors);
  return n === 0 ? null : <p class="remark" role="alert" data-testid="mend-line"><span aria-hidden="true">{'\u25b2'} </span>{words.check.mend(n)}</p>;
}
