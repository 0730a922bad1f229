import { useState } from 'preact/hooks';
import type { Answer } from '../api/http';
import type { Errors } from '../check/build';
import { words } from '../words';
import { focusFirstWrong, formInHand } from './mending';

/** Sending something that a person did: busy meanwhile, and the reason when it was not taken, to which the focus goes. What was typed stays in the form. */
export function useAction<T>(done: (value: T) => void) {
  const [busy, setBusy] = useState(false);
  const [errors, setErrors] = useState<Errors>({});
  const mark = (said: Errors, form = formInHand()) => {
    setErrors(said);
    if (Object.keys(said).length > 0) focusFirstWrong(form);
  };
  const run = async (send: () => Promise<Answer<T>>) => {
    if (busy) return;
    // Asked for now: the button that was pressed is switched off meanwhile.
    const form = formInHand();
    setBusy(true);
    setErrors({});
    const answer = await send();
    setBusy(false);
    if (answer.ok) return done(answer.value);
    const said: Errors = {};
    for (const e of answer.problem?.errors ?? []) said[e.field] = e.text;
    if (Object.keys(said).length === 0) said['form'] = answer.problem ? `${words.error.refused}: ${answer.problem.title}` : words.error.unreachable + ' ' + words.error.kept;
    mark(said, form);
  };
  return { busy, errors, run, setErrors: (said: Errors) => mark(said) };
}
