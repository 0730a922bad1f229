import { useState } from 'preact/hooks';
import type { Json, PlantFileEdit, PlantFileProblem } from '../contract.plantFile';
import { words } from '../words';
import { OneField } from './OneField';
import { Problems } from './Problems';
import { freshId, hintOf, itemsOf, keysOf, kindOf, labelOf, resolved, type Schema } from './schema';

const w = words.plantFile;

/** What every part of the form needs: the schema, the content, what is wrong, and where a change goes. */
export interface FormContext { root: Schema; tree: Json; problems: PlantFileProblem[]; refused: Record<string, string>; edit: (...edits: PlantFileEdit[]) => void; has: (path: string) => boolean }

const join = (path: string, key: string) => (path ? `${path}.${key}` : key);
const within = (path: string, key: string) => key === path || key.startsWith(path + '.') || key.startsWith(path + '[');
const titleOf = (value: Json): string => { const k = keysOf(value); return [k['name'], k['what'], k['measurand'], k['organism'], k['person'], k['id']].map(x => (Array.isArray(x) ? x.join(', ') : x)).find(x => typeof x === 'string' && x !== '') as string ?? ''; };

/** What is said of a place: its problems, and why a change could not be made. */
export const saidOf = (c: FormContext, path: string) => [c.refused[path], ...c.problems.filter(p => !p.file && p.key === path).map(p => p.text)].filter(Boolean).join(' ') || undefined;

function Fold({ path, title, c, children, onRemove }: { path: string; title: string; c: FormContext; children: () => preact.ComponentChildren; onRemove?: () => void }) {
  const [open, setOpen] = useState(false);
  const [sure, ask] = useState(false);
  const wrong = c.problems.filter(p => !p.file && within(path, p.key)).length;
  return (
    <details class="file-fold" data-testid={`part-${path}`} open={open} onToggle={e => setOpen(e.currentTarget.open)}>
      <summary><b>{title}</b>{wrong > 0 && <span class="remark"> <span aria-hidden="true">{'\u25b2'} </span>{w.problems(wrong)}</span>}</summary>
      {open && <div class="file-part">{children()}
        {onRemove && <div class="inline">{sure ? <><button type="button" data-testid={`remove-${path}`} onClick={onRemove}>{w.removeSure}</button><button type="button" onClick={() => ask(false)}>{w.keep}</button></>
          : <button class="quiet-button" type="button" data-testid={`ask-remove-${path}`} onClick={() => ask(true)}>{w.remove(title)}</button>}</div>}
      </div>}
    </details>
  );
}

function Items({ path, name, schema, value, c }: { path: string; name: string; schema: Schema; value: Json | undefined; c: FormContext }) {
  const item = resolved(c.root, schema.items ?? {}), all = itemsOf(value), said = saidOf(c, path);
  // What one of them is called stands in the schema.
  const one = (schema.items?.$ref ?? name).replace('#/$defs/', '');
  const add = () => c.edit({ do: 'add', path, value: item.properties?.['id'] ? { id: freshId(c.tree, one.replaceAll('_', '-')) } : beginning(c.root, item) });
  return (
    <Fold path={path} title={`${labelOf(name)} (${all.length})`} c={c}>{() => <>
      <p class="hint">{hintOf(schema)}</p>
      {said && <p class="remark">{said}</p>}
      {all.map((v, i) => <Fold key={i} path={`${path}[${i}]`} title={titleOf(v) || `${i + 1}`} c={c} onRemove={() => c.edit({ do: 'remove', path: `${path}[${i}]` })}>{() => <Group path={`${path}[${i}]`} schema={item} value={v} c={c} />}</Fold>)}
      <button type="button" data-testid={`add-${path}`} onClick={add}>{w.add(one.replaceAll('_', ' '))}</button>
    </>}</Fold>
  );
}

// An item without an id begins with its first choice, which is then put right.
function beginning(root: Schema, item: Schema): Json {
  const first = item.required?.[0] ?? Object.keys(item.properties ?? {})[0]!;
  const s = resolved(root, item.properties![first]!), of = resolved(root, s.items ?? {});
  return { [first]: s.type === 'array' ? [of.enum?.[0] ?? ''] : s.enum?.[0] ?? '' };
}

function Group({ path, schema, value, c }: { path: string; schema: Schema; value: Json | undefined; c: FormContext }) {
  const here = keysOf(value);
  return <>{Object.entries(schema.properties ?? {}).map(([key, raw]) => {
    const s = resolved(c.root, raw), at = join(path, key), kind = kindOf(c.root, s), required = schema.required?.includes(key) ?? false;
    if (kind === 'items') return <Items key={key} path={at} name={key} schema={s} value={here[key]} c={c} />;
    if (kind !== 'group') return <OneField key={key} path={at} name={key} schema={s} kind={kind} value={here[key]} required={required} c={c} renames={key === 'id' && schema.properties?.['was'] !== undefined} />;
    if (here[key] === undefined) return <button key={key} type="button" class="quiet-button" data-testid={`add-${at}`} onClick={() => c.edit({ do: 'set', path: at, value: {} })}>{w.addGroup(labelOf(key))}</button>;
    return <Fold key={key} path={at} title={labelOf(key)} c={c} {...(required ? {} : { onRemove: () => c.edit({ do: 'remove', path: at }) })}>{() => <><p class="hint">{hintOf(s)}</p><Group path={at} schema={s} value={here[key]} c={c} /></>}</Fold>;
  })}</>;
}

/** The plant file as a form, made from its schema: whatever the schema knows can be said here. */
export function FormView({ c }: { c: FormContext }) {
  return (
    <section class="sheet card file-form" data-testid="file-form">
      <Group path="" schema={c.root} value={c.tree} c={c} />
      <Problems problems={c.problems} />
    </section>
  );
}
