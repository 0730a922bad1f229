import type { Signal } from '@preact/signals';
import { useMemo, useRef } from 'preact/hooks';
import type { CheckAnswer, LimitBand, ProbeInfo } from '../contract';
import { serverNow } from '../live/clock';
import { limitText } from '../parts/beyond';
import { LiveValue } from '../parts/LiveValue';
import { StandingMark } from '../parts/StandingMark';
import { link } from '../router';
import { words } from '../words';
import type { Columns } from './columns';
import { marksOf, type DoubtNow, type Happening } from './marks';
import { shadesOf } from './shades';
import { Strip } from './Strip';
import { useColumns } from './useColumns';
import type { Shown } from './window';

export interface Common { shown: Signal<Shown>; cursor: Signal<number | null>; width: number; axis: boolean; checks: CheckAnswer[]; pace?: number | undefined }

/** What the page of one probe, or of one alarm, draws over its strip; of tests alone the measurand stands for the probe. */
export interface Overlay { probeId: string; flowSwitch: ProbeInfo | null; happenings: Happening[]; standing?: DoubtNow; legend?: string }

/** A corrected line without the raw one beside it; the raw one where nothing was corrected. */
const withoutRaw = (c: Columns): Columns => {
  if (!c[4].some(v => v !== null)) return c;
  const none = c[0].map(() => null);
  return [c[0], none, none, c[4], none];
};

/** The strip of one probe. `raw` draws the raw line beside a corrected one; `plain` leads nowhere. */
export function ProbeStrip({ probe, heading, limit, overlay, owner = true, raw = true, plain, ...common }: Common & {
  probe: ProbeInfo; heading: string; limit: LimitBand | undefined; overlay?: Overlay | undefined; owner?: boolean; raw?: boolean; plain?: boolean;
}) {
  const redraw = useRef(() => {});
  const { held, state, tier } = useColumns(probe, common.shown, common.width, () => redraw.current());
  const flowing = useColumns(overlay?.flowSwitch ?? null, common.shown, common.width, () => redraw.current());
  const marks = useMemo(() => marksOf(common.checks, probe.measurand, probe.id, overlay?.standing), [common.checks, probe, overlay?.standing]);
  const empty = state === 'ready' && held.current.columns[0].length === 0;
  const note = state === 'failed' ? words.strips.failed : state === 'loading' ? words.loading : empty ? words.strips.empty : tier && tier !== 'raw' ? words.strips.tier(words.tier[tier]) : '';
  const flow = probe.measurand === 'sample_flow';
  return (
    <Strip {...common} name={heading} testId={`strip-${probe.id}`} decimals={probe.decimals} unit={probe.unit} limit={limit} marks={marks} columns={() => (raw ? held.current.columns : withoutRaw(held.current.columns))}
      happenings={overlay?.happenings} shades={overlay?.flowSwitch ? () => shadesOf(flowing.held.current.columns, serverNow()) : undefined} note={note} stepped={flow} bind={f => { redraw.current = f; }}
      head={<>
        <h3>{plain ? heading : <a href={link('probe', probe.id)}>{heading}</a>}</h3>
        <StandingMark probeId={probe.id} testId={owner} />
        {limit && <span class="hint">{words.overview.limit} {limitText(limit)}</span>}
        {probe.referenceElectrode && <span class="hint">{words.strips.against(probe.referenceElectrode)}</span>}
        <LiveValue probe={probe} limit={limit} testId={owner} />
      </>} />
  );
}
