import { useEffect, useMemo, useState } from 'preact/hooks';
import type { ProbeInfo } from '../contract';
import type { ProbeHistory } from '../contract.probe';
import { JudgementCard } from '../check/AnswerView';
import { fixed, signed, unitText } from '../format/number';
import { dayClock } from '../format/zone';
import { allPools, allProbes, circuits, nameOf, probeViews, site, zone } from '../live/store';
import { Age } from '../parts/Age';
import { limitOf } from '../parts/beyond';
import { LiveValue } from '../parts/LiveValue';
import { StandingMark } from '../parts/StandingMark';
import { usePolled } from '../parts/usePolled';
import { LazyStrips } from '../pool/LazyStrips';
import { link } from '../router';
import { words } from '../words';
import { BiasChart } from './BiasChart';
import { Calibrations } from './Calibrations';
import { DecideForm } from './DecideForm';
import { OfferCard } from './OfferCard';
import { OrpSheet } from './OrpSheet';

function Head({ probe }: { probe: ProbeInfo }) {
  const view = probeViews.value.get(probe.id);
  const pool = probe.poolId ? allPools.value.get(probe.poolId) : undefined;
  const d = probe.decimals;
  return (
    <section class="sheet card" data-testid={`probe-${probe.id}`}>
      <div class="probe-top"><div><h1>{nameOf(probe.id)}</h1><p class="hint">{pool ? <a href={link('pool', pool.id)}>{pool.name}</a> : words.poolPage.common}, {words.poolPage.origin[probe.origin]}
        {probe.referenceElectrode && `, ${words.strips.against(probe.referenceElectrode)}`}, {words.probe.range(`${probe.rangeLow}\u2009\u2013\u2009${probe.rangeHigh} ${unitText(probe.unit)}`)}</p></div>
        <LiveValue probe={probe} limit={limitOf(pool?.limits ?? [], probe.measurand)} /></div>
      <p class="big-standing"><StandingMark probeId={probe.id} long /></p>
      {view?.reasons.map((r, i) => <p key={i}>{r.text}</p>)}
      <dl class="side-by-side">
        <div><dt>{words.probe.raw}</dt><dd>{fixed(view?.raw, d)}</dd></div>
        <div><dt>{words.probe.corrected}</dt><dd>{fixed(view?.value, d)}</dd></div>
        <div class="believed"><dt>{words.poolPage.believed}</dt><dd>{view?.believed ? `${fixed(view.believed.value, d)} \u00b1 ${fixed(view.believed.u, d)}` : '\u2013'}</dd></div>
        <div><dt>{words.poolPage.bias}</dt><dd>{view?.bias ? `${signed(view.bias.value, d)} \u00b1 ${fixed(view.bias.u, d)}` : '\u2013'}</dd></div>
      </dl>
      {view && !view.judgedAt && <p class="hint">{words.probe.noBias}</p>}
      {view?.judgedAt && <p class="hint">{words.verdict[view.verdict]} ({words.probe.judged} <Age at={view.judgedAt} />). {words.probe.restsOn(view.pairs)}</p>}
      <div class="inline">{pool && <a class="button" href={link('check', pool.id)}>{words.overview.check}</a>}<a class="button" href={link('pumps', probe.id)}>{words.pumps.write}</a></div>
    </section>
  );
}

function Probe({ probe }: { probe: ProbeInfo }) {
  const view = probeViews.value.get(probe.id);
  const { data, failed, problem, reload } = usePolled<ProbeHistory>('/probes/' + encodeURIComponent(probe.id), 60_000);
  const proposals = [...circuits.value.values()].flatMap(c => c.proposals).filter(c => c.probeId === probe.id);
  const waiting = [...new Map([...(data?.calibrations ?? []).filter(c => c.status === 'proposed'), ...proposals].map(c => [c.id, c])).values()]
    .filter(c => !data?.calibrations.some(x => x.id === c.id && x.status !== 'proposed'));
  const key = `${view?.judgedAt} ${view?.calibration?.id} ${view?.calibration?.status} ${proposals.map(p => p.id).join()}`;
  useEffect(() => { if (data) reload(); }, [key]);
  const probes = useMemo(() => [probe], [probe]);
  const [shown, show] = useState(8);
  const limits = (probe.poolId ? allPools.value.get(probe.poolId)?.limits : undefined) ?? [];
  return (
    <div class="pool-page">
      <div class="side">
        <Head probe={probe} />
        {waiting.map(p => <DecideForm key={p.id} probe={probe} proposal={p} onDone={reload} />)}
        {data?.offer && waiting.length === 0 && <OfferCard probe={probe} offer={data.offer} onDone={reload} />}
        {data && !data.offer && waiting.length === 0 && data.advice.length > 0 && (
          <section class="sheet card" data-testid="advice"><h2>{words.probe.noOffer}</h2><ul class="plain">{data.advice.map((a, i) => <li key={i}>{a.text}</li>)}</ul></section>)}
        {data && <Calibrations probe={probe} all={data.calibrations} />}
        {probe.measurand === 'orp' && <OrpSheet probe={probe} />}
      </div>
      <div class="wide">
        <LazyStrips key={probe.id} poolId={probe.poolId} probes={probes} limits={limits} tests={[]} fresh={key} first="day" />
        <section class="sheet card later"><h2>{words.probe.biasTitle}</h2>
          {data ? <BiasChart judgements={data.judgements} decimals={probe.decimals} /> : <p class="hint">{failed ? problem?.title ?? words.error.unreachable : words.loading}</p>}</section>
        {data && <section class="sheet card later" data-testid="judgements"><h2>{words.probe.judgements}</h2>
          {data.judgements.length === 0 ? <p class="hint">{words.probe.noJudgements}</p> : (
            <ul class="judgements">{data.judgements.slice(0, shown).map(j => <JudgementCard key={j.checkId} j={j} when={dayClock(j.sampledAt, zone.value)} testId={false} />)}</ul>)}
          {data.judgements.length > shown && <button type="button" onClick={() => show(n => n + 40)}>{words.probe.olderChecks(data.judgements.length - shown)}</button>}</section>}
      </div>
    </div>
  );
}

export function ProbePage({ id }: { id: string }) {
  const probe = allProbes.value.get(id);
  if (probe) return <Probe key={id} probe={probe} />;
  return <p class="empty">{site.value ? words.pageMissing : words.overview.waiting} <a href="#/">{words.back}</a></p>;
}
