import { useComputed, type Signal } from '@preact/signals';
import type { ProbeInfo } from '../contract';
import { fixed, unitText } from '../format/number';
import { words } from '../words';
import type { Columns } from './columns';
import type { Mark } from './marks';

/** What the cursor stands on in one strip. */
export interface Pointed { index: number | null; mark: Mark | null; happening: string | null; ghost: number | null }

/** What the solid and the broken line of a strip are called. */
export interface Pair { solid: string; broken: string }

type Written = Pick<ProbeInfo, 'decimals' | 'unit'> & { pair?: Pair | undefined };

export function Readout({ probe, pointed, columns, stepped, other = '' }: { probe: Written; pointed: Signal<Pointed>; columns: () => Columns; stepped: boolean; other?: string }) {
  const text = useComputed(() => said(pointed.value, columns(), probe, stepped, other));
  return <span class="readout" aria-hidden="true">{text.value}</span>;
}

function said({ index, mark, happening, ghost }: Pointed, c: Columns, probe: Written, stepped: boolean, other: string): string {
  const n = (v: number | null | undefined) => fixed(v, probe.decimals);
  const out: string[] = [];
  const raw = index === null ? null : c[3][index], corrected = index === null ? null : c[4][index];
  if (index !== null && probe.pair) {
    // Beside a broken line the solid one stands in the last column.
    const two = c[4].some(v => v !== null), solid = two ? corrected : raw, broken = two ? raw : null;
    out.push(solid == null ? words.strips.gap : `${probe.pair.solid} ${n(solid)} ${unitText(probe.unit)}`);
    if (broken != null) out.push(`${probe.pair.broken} ${n(broken)} ${unitText(probe.unit)}`);
  } else if (index !== null) {
    if (raw == null && corrected == null) out.push(words.strips.gap);
    else if (raw == null) out.push(`${words.strips.corrected} ${n(corrected)} ${unitText(probe.unit)}`);
    else if (stepped) return raw > 0.95 ? words.flow : raw < 0.05 ? words.noFlow : words.strips.partFlow(fixed(raw * 100, 0));
    else if (corrected == null) out.push(`${n(raw)} ${unitText(probe.unit)}`);
    else out.push(`${words.strips.corrected} ${n(corrected)}`, `${words.strips.raw} ${n(raw)} ${unitText(probe.unit)}`);
    if (c[1][index] != null && c[2][index] != null && raw != null) out.push(`${n(c[1][index])}\u2009\u2013\u2009${n(c[2][index])}`);
  }
  if (ghost !== null && other) out.push(words.stripTools.ghostReads(other, n(ghost)));
  if (mark) {
    const bound = mark.bound === 'below' ? '< ' : mark.bound === 'above' ? '> ' : '';
    out.push(`${words.strips.test} ${bound}${n(mark.value)}${mark.u > 0 ? ` \u00b1 ${n(mark.u)}` : ''}, ${mark.who}${mark.doubted ? `, ${words.probePage.testDoubted}` : ''}`);
  }
  if (happening) out.push(happening);
  return out.join(' \u00b7 ');
}
