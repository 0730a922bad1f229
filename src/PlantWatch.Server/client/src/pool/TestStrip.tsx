import { useMemo, useRef } from 'preact/hooks';
import type { LimitBand, Measurand } from '../contract';
import { decimalsOf, unitOf } from '../format/number';
import { limitText } from '../parts/beyond';
import { words } from '../words';
import { noColumns } from './columns';
import { marksOf, type Happening } from './marks';
import type { Common } from './ProbeStrip';
import { Strip } from './Strip';

const none = noColumns();

/** A strip of tests alone, for what no probe measures. */
export function TestStrip({ measurand, limit, happenings, ...common }: Common & { measurand: Measurand; limit: LimitBand | undefined; happenings?: Happening[] | undefined }) {
  const redraw = useRef(() => {});
  const marks = useMemo(() => marksOf(common.checks, measurand), [common.checks, measurand]);
  return (
    <Strip {...common} name={words.measurand[measurand]} testId={`strip-${measurand}`} decimals={decimalsOf(measurand)} unit={unitOf(measurand)} limit={limit} marks={marks} columns={() => none} happenings={happenings}
      note={marks.length === 0 ? words.strips.noTests : words.strips.testsOnly} bind={f => { redraw.current = f; }} compared={undefined}
      head={<><h3>{words.measurand[measurand]}</h3>{limit && <span class="hint">{words.overview.limit} {limitText(limit)}</span>}</>} />
  );
}
