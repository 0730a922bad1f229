import { useEffect, useMemo } from 'preact/hooks';
import type { CalibrationView, ProbeInfo } from '../contract';
import type { ProbeHistory } from '../contract.probe';
import { allProbes, circuits, limitsOfPool, probeViews } from '../live/store';
import { usePolled } from '../parts/usePolled';
import { LazyStrips } from '../pool/LazyStrips';
import type { Happening } from '../pool/marks';
import type { Overlay } from '../pool/ProbeStrip';
import { Missing } from '../parts/Missing';
import { link } from '../router';
import { TrustStory } from '../trust/TrustStory';
import { words } from '../words';
import { AgreementCard } from './AgreementCard';
import { AnswerCard } from './AnswerCard';
import { BiasChart } from './BiasChart';
import { Calibrations } from './Calibrations';
import { DecideForm } from './DecideForm';
import { LearnedCard } from './LearnedCard';
import { correction, OfferCard } from './OfferCard';
import { OrpSheet } from './OrpSheet';
import { SignalCard } from './SignalCard';
import { VerdictList } from './VerdictList';

const none: Happening[] = [];

/** What was done to the probe and when. Numbers that were turned down did nothing, but what was cleaned is clean. */
const happeningsOf = (probe: ProbeInfo, all: CalibrationView[]): Happening[] => all.filter(c => c.holdsFrom !== null && (c.status !== 'rejected' || c.work?.length))
  .map(c => ({ t: Date.parse(c.holdsFrom!), text: [words.calibrationKind[c.kind] + (c.kind === 'verification' ? '' : `: ${correction(c, probe)}`), ...(c.work ?? []).map(k => words.inText(words.calibrate.work.kinds[k]))].join(', ') }));

function overlayOf(probe: ProbeInfo, history: ProbeHistory | null): Overlay {
  return {
    probeId: probe.id, flowSwitch: (history?.flowSwitchId && allProbes.value.get(history.flowSwitchId)) || null, happenings: history ? happeningsOf(probe, history.calibrations) : none,
    standing: { doubted: new Set(history?.doubted), takenIn: new Set(history?.takenIn) },
  };
}

/** Proposals that nobody has decided yet, from the last answer and from what came live since. */
function useWaiting(probe: ProbeInfo, data: ProbeHistory | null): CalibrationView[] {
  const proposals = [...circuits.value.values()].flatMap(c => c.proposals).filter(c => c.probeId === probe.id);
  return [...new Map([...(data?.calibrations ?? []).filter(c => c.status === 'proposed'), ...proposals].map(c => [c.id, c])).values()]
    .filter(c => !data?.calibrations.some(x => x.id === c.id && x.status !== 'proposed'));
}

function Probe({ probe }: { probe: ProbeInfo }) {
  const view = probeViews.value.get(probe.id);
  const { data, failed, problem, reload } = usePolled<ProbeHistory>('/probes/' + encodeURIComponent(probe.id), 60_000);
  const waiting = useWaiting(probe, data);
  const key = `${view?.judgedAt} ${view?.verdict} ${view?.standing} ${view?.pairs} ${view?.calibration?.id} ${view?.calibration?.status} ${waiting.map(p => p.id).join()}`;
  useEffect(() => { if (data) reload(); }, [key]);
  const overlay = useMemo(() => overlayOf(probe, data), [probe, data]);
  const probes = useMemo(() => (overlay.flowSwitch ? [probe, overlay.flowSwitch] : [probe]), [probe, overlay.flowSwitch]);
  const limits = limitsOfPool(probe.poolId);
  return (
    <div class="pool-page probe-page">
      <div class="side">
        <AnswerCard probe={probe} history={data} />
        {failed && <p class="notice" role="status" data-testid="kept-view">{data ? words.probePage.kept : problem?.title ?? words.error.unreachable}</p>}
        {waiting.map(p => <DecideForm key={p.id} probe={probe} proposal={p} onDone={reload} />)}
        {data?.offer && waiting.length === 0 && <OfferCard probe={probe} offer={data.offer} onDone={reload} />}
        {data?.limits && !data.offer && waiting.length === 0 && data.advice.length > 0 && (
          <section class="sheet card later" data-testid="advice"><h2>{words.probe.noOffer}</h2><ul class="plain">{data.advice.map((a, i) => <li key={i}>{a.text}</li>)}</ul>
            <div class="inline"><a class="button" href={link('calibrate', probe.id)} data-testid="to-calibrate">{words.probePage.calibrate}</a></div></section>)}
        {probe.poolId && data?.limits && <TrustStory poolId={probe.poolId} onlyOpen />}
        {data?.learned && <LearnedCard learned={data.learned} />}
        {data && <SignalCard probe={probe} signal={data.signal} />}
        {data && <Calibrations probe={probe} all={data.calibrations} />}
        {probe.measurand === 'orp' && <OrpSheet probe={probe} />}
      </div>
      <div class="wide">
        <LazyStrips key={probe.id} poolId={probe.poolId} probes={probes} limits={limits} tests={[]} fresh={key} first="week" overlay={overlay} />
        {data?.limits && <section class="sheet card" data-testid="bias"><h2>{words.probePage.bias.title}</h2><BiasChart probe={probe} history={data} /></section>}
        {!data && !failed && <p class="hint">{words.loading}</p>}
        {data && (data.limits || data.judgements.length > 0) && <VerdictList probe={probe} history={data} />}
        {data && <AgreementCard probe={probe} history={data} />}
      </div>
    </div>
  );
}

export function ProbePage({ id }: { id: string }) {
  const probe = allProbes.value.get(id);
  if (probe) return <Probe key={id} probe={probe} />;
  return <Missing />;
}
