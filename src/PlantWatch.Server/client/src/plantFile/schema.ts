import type { Json, PlantFileEdit } from '../contract.plantFile';

// The schema of the plant file as the form needs it: what a place is, and what is said of it.

export interface Schema {
  $ref?: string; type?: string; description?: string; enum?: string[]; properties?: Record<string, Schema>; items?: Schema; required?: string[]; minItems?: number; maxItems?: number;
  $defs?: Record<string, Schema>; 'x-unit'?: string; 'x-expected'?: string;
}

/** A place with its reference followed; what stands beside the reference goes first. */
export function resolved(root: Schema, at: Schema): Schema {
  const target = at.$ref ? root.$defs?.[at.$ref.replace('#/$defs/', '')] : undefined;
  return target ? { ...resolved(root, target), ...at } : at;
}

export type Kind = 'group' | 'items' | 'several' | 'pair' | 'words' | 'choice' | 'yesno' | 'number' | 'text';

export function kindOf(root: Schema, s: Schema): Kind {
  if (s.type === 'object' || s.properties) return 'group';
  if (s.type === 'array') {
    const item = resolved(root, s.items ?? {});
    if (item.properties) return 'items';
    if (item.enum) return 'several';
    return item.type === 'number' ? 'pair' : 'words';
  }
  if (s.enum) return 'choice';
  if (s.type === 'boolean') return 'yesno';
  return s.type === 'number' || s.type === 'integer' ? 'number' : 'text';
}

export const keysOf = (j: Json | undefined): { [key: string]: Json } => (j !== null && typeof j === 'object' && !Array.isArray(j) ? j : {});
export const itemsOf = (j: Json | undefined): Json[] => (Array.isArray(j) ? j : []);

/** What people read of a key: main words of the file itself, so that form and text speak of the same. */
export const labelOf = (key: string) => (key.charAt(0).toUpperCase() + key.slice(1)).replaceAll('_', ' ');
export const hintOf = (s: Schema) => (s.description ?? '').replace(/ No unit\.$/, '');

const stepsOf = (path: string): (string | number)[] => [...path.matchAll(/([A-Za-z0-9_-]+)(?![^[]*\])|\[(\d+)\]/g)].map(m => (m[2] !== undefined ? Number(m[2]) : m[1]!));

/** The tree as it will be once the changes that wait are in the text; so that what was just typed stands in the form. */
export function withEdits(tree: Json, edits: PlantFileEdit[]): Json {
  if (edits.length === 0) return tree;
  const next = structuredClone(tree);
  for (const e of edits) apply(next, e);
  return next;
}

function apply(root: Json, e: PlantFileEdit): void {
  const steps = stepsOf(e.path), last = steps.pop()!;
  let at = root as never as Record<string | number, Json> | null;
  for (const s of steps) at = (at?.[s] ?? null) as typeof at;
  if (!at || typeof at !== 'object') return;
  if (e.do === 'set') at[last] = e.value ?? null;
  else if (e.do === 'remove') { if (Array.isArray(at)) at.splice(Number(last), 1); else delete at[last]; }
  else if (Array.isArray(at[last])) (at[last] as Json[]).push(e.value ?? null);
  else at[last] = [e.value ?? null];
}

/** A number where it is one; else the text as it was typed, which the server then objects to in words. */
export const numberOr = (said: string): Json => {
  const t = said.trim();
  return /^-?\d+([.,]\d+)?$/.test(t) ? Number(t.replace(',', '.')) : t;
};

/** A key for a new item that is nobody's. */
export function freshId(tree: Json, stem: string): string {
  const taken = new Set(JSON.stringify(tree).match(/"id":"[^"]*"/g) ?? []);
  for (let n = 1; ; n++) if (!taken.has(`"id":"${stem}-${n}"`)) return `${stem}-${n}`;
}
