import { words } from '../words';
import { Field, tie } from './Field';
import { setWho, who } from './person';

/** Who does it; remembered on the device. */
export function NameField({ name, error, label }: { name: string; error?: string | undefined; label?: string }) {
  return (
    <Field name={name} label={label ?? words.name} error={error}>
      <input type="text" autocomplete="name" value={who.value} {...tie(name, error)} onInput={e => setWho(e.currentTarget.value)} />
    </Field>
  );
}
