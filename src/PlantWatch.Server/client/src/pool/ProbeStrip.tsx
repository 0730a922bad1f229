import { useSignal, useSignalEffect, type Signal } from '@preact/signals';
import { useMemo, useRef } from 'preact/hooks';
import type { CheckAnswer, LimitBand, ProbeInfo } from '../contract';
import { serverNow } from '../live/clock';
import { limitText } from '../parts/beyond';
import { LiveValue } from '../parts/LiveValue';
import { StandingMark } from '../parts/StandingMark';
import { link } from '../router';
import { words } from '../words';
import type { Compared } from './ghost';
import { isCorrected, looked, type Look } from './look';
import { marksOf, type DoubtNow, type Happening } from './marks';
import type { NoteSpan } from './notes';
import { shadesOf } from './shades';
import { Strip } from './Strip';
import { useColumns } from './useColumns';
import { useGhost } from './useGhost';
import type { Shown } from './window';

export interface Common {
  shown: Signal<Shown>; cursor: Signal<number | null>; width: number; axis: boolean; checks: CheckAnswer[]; pace?: number | undefined; share?: number | undefined;
  /** What the tools of a page choose; without them both lines are drawn and no other day. */
  look?: Signal<Look> | undefined; compared?: Signal<Compared | null> | undefined; noted?: Signal<readonly NoteSpan[]> | undefined;
  /** Set once a strip has a corrected line: only then is there something to choose. */
  corrected?: Signal<boolean> | undefined;
  onOpen?: ((checkId: string) => void) | undefined;
}

/** What the page of one probe, or of one alarm, draws over its strip; of tests alone the measurand stands for the probe. */
export interface Overlay { probeId: string; flowSwitch: ProbeInfo | null; happenings: Happening[]; standing?: DoubtNow; legend?: string }

/** The strip of one probe. `raw` draws the raw line beside a corrected one; `plain` leads nowhere. */
export function ProbeStrip({ probe, heading, limit, overlay, owner = true, raw = true, plain, ...common }: Common & {
  probe: ProbeInfo; heading: string; limit: LimitBand | undefined; overlay?: Overlay | undefined; owner?: boolean; raw?: boolean; plain?: boolean;
}) {
  const redraw = useRef(() => {});
  const both = useSignal<Look>(raw ? 'both' : 'corrected'), alone = useSignal<Compared | null>(null);
  const look = common.look ?? both;
  const { held, state, tier } = useColumns(probe, common.shown, common.width, () => {
    if (common.corrected && !common.corrected.peek() && isCorrected(held.current.columns)) common.corrected.value = true;
    redraw.current();
  });
  const flowing = useColumns(overlay?.flowSwitch ?? null, common.shown, common.width, () => redraw.current());
  const ghost = useGhost(probe, common.compared ?? alone, common.shown, common.width, () => redraw.current());
  const marks = useMemo(() => marksOf(common.checks, probe.measurand, probe.id, overlay?.standing), [common.checks, probe, overlay?.standing]);
  useSignalEffect(() => { look.value; redraw.current(); });
  const empty = state === 'ready' && held.current.columns[0].length === 0;
  const note = state === 'failed' ? words.strips.failed : state === 'loading' ? words.loading : empty ? words.strips.empty : tier && tier !== 'raw' ? words.strips.tier(words.tier[tier]) : '';
  const flow = probe.measurand === 'sample_flow';
  return (
    <Strip {...common} name={heading} testId={`strip-${probe.id}`} decimals={probe.decimals} unit={probe.unit} limit={limit} marks={marks} columns={() => looked(held.current.columns, look.peek())}
      ghost={flow ? undefined : () => ghost.current} happenings={overlay?.happenings} shades={overlay?.flowSwitch ? () => shadesOf(flowing.held.current.columns, serverNow()) : undefined} note={note} stepped={flow} bind={f => { redraw.current = f; }}
      head={<>
        <h3>{plain ? heading : <a href={link('probe', probe.id)}>{heading}</a>}</h3>
        <StandingMark probeId={probe.id} testId={owner} />
        {limit && <span class="hint">{words.overview.limit} {limitText(limit)}</span>}
        {probe.referenceElectrode && <span class="hint">{words.strips.against(probe.referenceElectrode)}</span>}
        <LiveValue probe={probe} limit={limit} testId={owner} />
      </>} />
  );
}
