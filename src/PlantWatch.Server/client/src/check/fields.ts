import type { CheckRequest, Measurand, Problem } from '../contract';
import { allProbes } from '../live/store';
import { words } from '../words';
import { fieldOf } from './build';

/** What people call a field of the form; empty for the whole. */
export function nameOfField(field: string): string {
  const w = words.check;
  if (field.startsWith('panel-')) return allProbes.value.get(field.slice(6))?.name ?? field.slice(6);
  if (field.startsWith('dilution-')) return `${words.measurand[field.slice(9) as Measurand]}, ${w.dilution}`;
  const names: Record<string, string> = { pool: w.pool, when: w.when, who: w.who, point: w.point, place: w.place, bathers: w.bathers, note: w.note, bottom: w.bottom };
  return names[field] ?? (words.measurand as Record<string, string>)[field] ?? '';
}

/** A sentence ends, whoever wrote it. */
const ended = (text: string) => (/[.?!\u2026]$/.test(text) ? text : text + '.');

/** What was said of fields, one after the other, each with its name. */
export const saidOf = (said: readonly { name: string; text: string }[]): string => said.map(s => ended(s.name ? `${s.name}: ${s.text}` : s.text)).join(' ');

/** Why a check was refused, its fields by name. */
export const refusalOf = (request: CheckRequest, problem: Problem): string => saidOf(problem.errors.map(e => ({ name: nameOfField(fieldOf(e.field, request)), text: e.text }))) || problem.title;
