import type { Signal } from '@preact/signals';
import { useMemo, useRef } from 'preact/hooks';
import type { CheckAnswer, LimitBand, ProbeInfo } from '../contract';
import { serverNow } from '../live/clock';
import { limitText } from '../parts/beyond';
import { LiveValue } from '../parts/LiveValue';
import { StandingMark } from '../parts/StandingMark';
import { link } from '../router';
import { words } from '../words';
import { marksOf, type DoubtNow, type Happening } from './marks';
import { shadesOf } from './shades';
import { Strip } from './Strip';
import { useColumns } from './useColumns';
import type { Shown } from './window';

export interface Common { shown: Signal<Shown>; cursor: Signal<number | null>; width: number; axis: boolean; checks: CheckAnswer[] }

/** What the page of one probe, or of one alarm, draws over its strip; of tests alone the measurand stands for the probe. */
export interface Overlay { probeId: string; flowSwitch: ProbeInfo | null; happenings: Happening[]; standing?: DoubtNow; legend?: string }

/** The strip of one probe. */
export function ProbeStrip({ probe, heading, limit, overlay, owner = true, ...common }: Common & {
  probe: ProbeInfo; heading: string; limit: LimitBand | undefined; overlay?: Overlay | undefined; owner?: boolean;
}) {
  const redraw = useRef(() => {});
  const { held, state, tier } = useColumns(probe, common.shown, common.width, () => redraw.current());
  const flowing = useColumns(overlay?.flowSwitch ?? null, common.shown, common.width, () => redraw.current());
  const marks = useMemo(() => marksOf(common.checks, probe.measurand, probe.id, overlay?.standing), [common.checks, probe, overlay?.standing]);
  const empty = state === 'ready' && held.current.columns[0].length === 0;
  const note = state === 'failed' ? words.strips.failed : state === 'loading' ? words.loading : empty ? words.strips.empty : tier && tier !== 'raw' ? words.strips.tier(words.tier[tier]) : '';
  const flow = probe.measurand === 'sample_flow';
  return (
    <Strip {...common} name={probe.name} testId={`strip-${probe.id}`} decimals={probe.decimals} unit={probe.unit} limit={limit} marks={marks} columns={() => held.current.columns}
      happenings={overlay?.happenings} shades={overlay?.flowSwitch ? () => shadesOf(flowing.held.current.columns, serverNow()) : undefined} note={note} stepped={flow} bind={f => { redraw.current = f; }}
      head={<>
        <h3><a href={link('probe', probe.id)}>{heading}</a></h3>
        <StandingMark probeId={probe.id} testId={owner} />
        {limit && <span class="hint">{words.overview.limit} {limitText(limit)}</span>}
        {probe.referenceElectrode && <span class="hint">{words.strips.against(probe.referenceElectrode)}</span>}
        <LiveValue probe={probe} limit={limit} testId={owner} />
      </>} />
  );
}
