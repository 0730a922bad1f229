import type { Measurand } from '../contract';
import type { BalanceInput } from '../contract.balance';
import type { WhatIfWater } from '../contract.whatIf';
import { decimalsOf, fixed, readTyped } from '../format/number';
import { asSi, asTyped } from '../format/units';

export type InputKey = keyof WhatIfWater;
export interface InputKind { key: InputKey; measurand: Measurand; low: number; high: number; step: number }

/** What can be moved, with the span of its slider; the number beside it takes more. */
export const inputKinds: InputKind[] = [
  { key: 'ph', measurand: 'ph', low: 6.4, high: 8.8, step: 0.01 },
  { key: 'temperature', measurand: 'temperature', low: 5, high: 45, step: 0.5 },
  { key: 'totalAlkalinity', measurand: 'total_alkalinity', low: 0, high: 300, step: 5 },
  { key: 'calciumHardness', measurand: 'calcium_hardness', low: 0, high: 800, step: 10 },
  { key: 'dissolvedSolids', measurand: 'dissolved_solids', low: 0, high: 6000, step: 50 },
  { key: 'cyanuricAcid', measurand: 'cyanuric_acid', low: 0, high: 150, step: 5 },
  { key: 'freeChlorine', measurand: 'free_chlorine', low: 0, high: 10, step: 0.1 },
];

export type Edits = Partial<Record<InputKey, string>>;
export type Start = Partial<Record<InputKey, number>>;

export function startOf(inputs: BalanceInput[]): Start {
  const out: Start = {};
  for (const kind of inputKinds) {
    const found = inputs.find(i => i.measurand === kind.measurand);
    if (found) out[kind.key] = found.value;
  }
  return out;
}

/** A figure as people of this site write it. */
export const written = (kind: InputKind, si: number): string => fixed(asTyped(kind.measurand, si), decimalsOf(kind.measurand));

/** As it stands in the field: what was typed, else the present figure as people write it. */
export const textOf = (kind: InputKind, edits: Edits, start: Start): string =>
  edits[kind.key] ?? (start[kind.key] === undefined ? '' : written(kind, start[kind.key]!));

/** The figure that is reckoned with, in SI; null when empty, undefined when it is no number. */
export function valueOf(kind: InputKind, edits: Edits, start: Start): number | null | undefined {
  const typed = edits[kind.key];
  if (typed === undefined) return start[kind.key] ?? null;
  const read = readTyped(typed);
  return read.kind === 'number' ? asSi(kind.measurand, read.value) : read.kind === 'empty' ? null : undefined;
}

/** The water that was set; null while a field holds no number. */
export function waterOf(edits: Edits, start: Start): WhatIfWater | null {
  const out = {} as WhatIfWater;
  for (const kind of inputKinds) {
    const value = valueOf(kind, edits, start);
    if (value === undefined) return null;
    out[kind.key] = value;
  }
  return out;
}

/** A figure as a slider gives it: with the decimals of its step. */
export const slid = (kind: InputKind, value: string): string => fixed(Number(value), decimalsOf(kind.measurand));
