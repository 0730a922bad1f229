import { useState } from 'preact/hooks';
import type { PackInfo } from '../contract.limits';
import type { PlantFileView } from '../contract.plantFile';
import { Field, OtherRemarks } from '../parts/Field';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { usePolled } from '../parts/usePolled';
import { words } from '../words';
import { missing, write } from './steps';

const w = words.start.pack;

export function PackStep({ onDone, onNext }: { onDone: (view: PlantFileView) => void; onNext: () => void }) {
  const { data, failed } = usePolled<PackInfo[]>('/limit-packs');
  const [id, setId] = useState('');
  const { busy, errors, run, setErrors } = useAction<PlantFileView>(onDone);
  if (!data) return <p class="hint" role="status">{failed ? words.error.unreachable : words.loading}</p>;
  const send = (e: Event) => {
    e.preventDefault();
    const wrong = missing(['pack', !id, w.needPack], ['by', !who.value.trim(), words.needName]);
    if (Object.keys(wrong).length) return setErrors(wrong);
    void run(() => write(() => [{ do: 'set', path: 'limit_pack', value: id }], words.start.why.pack));
  };
  const choice = (p: PackInfo) => (
    <label key={p.id} class="choice"><input type="radio" name="pack" value={p.id} checked={id === p.id} data-testid={`pack-${p.id}`} onChange={() => setId(p.id)} />
      <span>{p.authority}, {p.edition}<span class="hint block">{w.rows(p.rows)}{p.fromMemory > 0 && `, ${w.memory(p.fromMemory)}`}</span></span></label>);
  const older = data.filter(p => p.superseded);
  return (
    <form class="stack" onSubmit={send} noValidate>
      <p class="hint">{w.lead}</p>
      <Field name="pack" label={w.choose} error={errors['pack'] ?? errors['limit_pack']} group>
        <div class="pack-choices">{data.filter(p => !p.superseded).map(choice)}</div>
        {older.length > 0 && <details><summary>{w.older} ({older.length})</summary><div class="pack-choices">{older.map(choice)}</div></details>}
      </Field>
      {!who.value.trim() || errors['by'] ? <NameField name="by" error={errors['by']} /> : null}
      <OtherRemarks errors={errors} shown={['pack', 'limit_pack', 'by']} />
      <div class="inline"><button class="primary" type="submit" disabled={busy} data-testid="save-pack">{busy ? words.start.saving : w.take}</button><button type="button" data-testid="no-pack" onClick={onNext}>{w.without}</button></div>
    </form>
  );
}
