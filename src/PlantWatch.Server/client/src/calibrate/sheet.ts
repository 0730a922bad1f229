import type { PointRequest, Row, SheetRequest } from '../contract.bench';
import { readTyped } from '../format/number';
import { bottleOf, type BenchDraft, type PointDraft } from './draft';

/** A number typed into a field; null while it is none. */
export const numberOf = (text: string): number | null => {
  const typed = readTyped(text);
  return typed.kind === 'number' ? typed.value : null;
};

/** What the probe read: settled, or as typed; null before. */
export const readingOf = (p: PointDraft): number | null => p.settled ?? numberOf(p.typed);

/** What is still missing of a point, by field. Empty when it is complete. */
export function missingOf(p: PointDraft): Partial<Record<'celsius' | 'label' | 'reading', 'empty' | 'wrong'>> {
  const of = (text: string) => { const t = readTyped(text); return t.kind === 'number' ? undefined : t.kind; };
  const celsius = of(p.celsius), label = p.labelled ? of(p.label) : undefined, reading = p.settled === null ? of(p.typed) : undefined;
  return { ...(celsius && { celsius }), ...(label && { label }), ...(reading && { reading }) };
}

/** A typed pH that no water and no buffer has. */
export const isNoPh = (p: PointDraft): boolean => { const typed = numberOf(p.typed); return p.settled === null && !p.millivolts && typed !== null && (typed < 0 || typed > 14); };

export const isComplete = (p: PointDraft): boolean => Object.keys(missingOf(p)).length === 0;

/** The value of a solution at a temperature, by straight line between the rows of its table; null outside. */
export function valueAt(table: Row[], celsius: number | null): number | null {
  if (celsius === null) return null;
  for (let i = 1; i < table.length; i++) {
    const a = table[i - 1]!, b = table[i]!;
    if (celsius >= a.celsius && celsius <= b.celsius) return a.value + ((b.value - a.value) * (celsius - a.celsius)) / (b.celsius - a.celsius);
  }
  return null;
}

function pointOf(p: PointDraft, d: BenchDraft): PointRequest {
  const bottle = d.bottles[bottleOf(p)];
  return {
    buffer: p.labelled ? 'unknown' : p.buffer, quinhydrone: p.labelled ? 'unknown' : p.quinhydrone, label: p.labelled ? numberOf(p.label) : null, celsius: numberOf(p.celsius) ?? Number.NaN,
    reading: readingOf(p) ?? Number.NaN, inMillivolts: p.settled === null && p.millivolts, source: p.settled === null ? 'typed' : 'settled', at: p.at === null ? null : new Date(p.at).toISOString(),
    lot: bottle?.lot.trim() || null, expires: bottle?.expires || null,
  };
}

/** The sheet as it goes to the server. Where nothing was touched, what was found calibrates as well: nobody stands in four buffers for nothing. */
export function sheetOf(d: BenchDraft, by: string, endedAt: number | null): SheetRequest {
  const found = d.noFound ? [] : d.found.filter(isComplete), points = (d.untouched ? found : d.points).filter(isComplete);
  return {
    by: by.trim(), note: d.note.trim() || null, work: d.untouched ? [] : d.work, startedAt: d.startedAt === null ? null : new Date(d.startedAt).toISOString(), endedAt: endedAt === null ? null : new Date(endedAt).toISOString(),
    asFound: found.map(p => pointOf(p, d)), points: points.map(p => pointOf(p, d)), asLeft: [],
  };
}
