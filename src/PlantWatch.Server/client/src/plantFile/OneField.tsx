import { useEffect, useRef, useState } from 'preact/hooks';
import type { Json } from '../contract.plantFile';
import { Field, tie } from '../parts/Field';
import { words } from '../words';
import { saidOf, type FormContext } from './FormView';
import { hintOf, itemsOf, labelOf, numberOr, resolved, type Kind, type Schema } from './schema';

const w = words.plantFile;
const shown = (v: Json | undefined): string => (v === undefined || v === null ? '' : typeof v === 'object' ? '' : String(v));

// Sent when it is left, not at each key: half a number is no problem to be told.
function Line({ id, value, error, decimal, commit }: { id: string; value: string; error: string | undefined; decimal: boolean; commit: (text: string) => void }) {
  const [typed, type] = useState(value);
  const told = useRef(value);
  // Only what is another value: the first look comes after the field is there, and somebody quick has typed by then.
  useEffect(() => { if (told.current === value) return; told.current = value; type(value); }, [value]);
  return <input type="text" {...(decimal ? { inputmode: 'decimal' as const } : {})} value={typed} {...tie(id, error)} onInput={e => type(e.currentTarget.value)} onChange={e => { if (e.currentTarget.value !== value) commit(e.currentTarget.value); }} />;
}

/** One value of the file: what the schema says of it, what stands there, and what is wrong with it. */
export function OneField({ path, name, schema, kind, value, required, c, renames }: {
  path: string; name: string; schema: Schema; kind: Kind; value: Json | undefined; required: boolean; c: FormContext; renames: boolean;
}) {
  const error = saidOf(c, path), list = itemsOf(value);
  const set = (v: Json) => c.edit({ do: 'set', path, value: v });
  const drop = () => { if (value !== undefined) c.edit({ do: 'remove', path }); };
  const put = (text: string) => {
    if (text.trim() === '' && !required) return drop();
    // Under a new id history would begin anew: the former one is named beside it.
    if (renames && c.has(path)) return c.edit({ do: 'set', path, value: text.trim() }, { do: 'set', path: path.replace(/id$/, 'was'), value: shown(value) });
    set(kind === 'number' ? numberOr(text) : text.trim());
  };
  const of = resolved(c.root, schema.items ?? {});
  const unit = schema['x-unit'];
  const label = labelOf(name) + (required ? '' : ` (${w.optional})`);
  const toggle = (word: string, on: boolean) => {
    if (on) return value === undefined ? set([word]) : c.edit({ do: 'add', path, value: word });
    return list.length === 1 && !required ? drop() : c.edit({ do: 'remove', path: `${path}[${list.indexOf(word)}]` });
  };
  const pair = (i: number, text: string) => {
    const next: Json[] = [list[0] ?? 0, list[1] ?? 0];
    next[i] = numberOr(text);
    set(next);
  };
  return (
    <Field name={path} label={label} error={error} hint={hintOf(schema)} group={kind === 'several' || kind === 'pair'}>
      {kind === 'choice' || kind === 'yesno'
        ? <select class="tall" value={shown(value)} {...tie(path, error)} onChange={e => (e.currentTarget.value === '' ? drop() : set(kind === 'yesno' ? e.currentTarget.value === 'true' : e.currentTarget.value))}>
          <option value="">{w.unsaid}</option>
          {(kind === 'yesno' ? ['true', 'false'] : schema.enum!).map(k => <option key={k} value={k}>{kind === 'yesno' ? w.yesNo[k as 'true' | 'false'] : k.replaceAll('_', ' ')}</option>)}
        </select>
        : kind === 'several' ? <div class="file-several">{of.enum!.map(k => <label key={k} class="choice-line"><input type="checkbox" checked={list.includes(k)} onChange={e => toggle(k, e.currentTarget.checked)} />{k.replaceAll('_', ' ')}</label>)}</div>
          : kind === 'pair' ? <div class="inline">{[0, 1].map(i => <label key={i} class="inline"><span class="hint">{w.ends[i]}</span><Line id={`${path}[${i}]`} value={shown(list[i])} error={error} decimal commit={t => pair(i, t)} /></label>)}</div>
            : kind === 'words' ? <Line id={path} value={list.map(shown).join(', ')} error={error} decimal={false} commit={t => (t.trim() === '' && !required ? drop() : set(t.split(',').map(x => x.trim()).filter(Boolean)))} />
              : <span class="inline"><Line id={path} value={shown(value)} error={error} decimal={kind === 'number'} commit={put} />{unit && <span class="unit">{unit}</span>}</span>}
    </Field>
  );
}
