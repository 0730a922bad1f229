import type { CalibrationView, JudgementView, ProbeInfo, ProbeView, WithU } from '../contract';
import type { NextStep, ProbeHistory, AdvisedStepView } from '../contract.probe';
import { daysAMonth, fixed, signed, unitText } from '../format/number';
import { allPools, limitsOfPool, nameOf, probeViews } from '../live/store';
import { Age } from '../parts/Age';
import { limitOf } from '../parts/beyond';
import { TickGlyph, WarnGlyph } from '../parts/Glyph';
import { LiveValue } from '../parts/LiveValue';
import { StandingMark } from '../parts/StandingMark';
import { link } from '../router';
import { words } from '../words';

/** A figure, and under it what it may be off by. */
function WithBar({ x, d, unit }: { x: WithU; d: number; unit: string }) {
  return <><span class="figure small">{fixed(x.value, d)} <span class="unit">{unit}</span></span> <span class="under">{`\u00b1\u00a0${fixed(x.u, d)}`}</span></>;
}

/** Where a step is taken; null for what is done at the plant alone. */
function Way({ step, probe }: { step: NextStep; probe: ProbeInfo }) {
  const pool = probe.poolId ?? '';
  switch (step) {
    case 'test': case 'repeat': case 'test_again': case 'other_reagent':
      return <a class="button" href={pool ? link('check', pool) : link('check')}>{words.probePage.enter}</a>;
    case 'calibrate': case 'adjust_panel': case 'replace': return <a class="button" href={link('calibrate', probe.id)}>{words.probePage.calibrate}</a>;
    case 'decide': return <button type="button" onClick={() => toDecision()}>{words.probePage.toDecision}</button>;
    case 'restore_signal': case 'restore_flow': case 'look': case 'clean': return <a class="button" href={link('pumps', probe.id)}>{words.probePage.writeFault}</a>;
    default: return null;
  }
}

function toDecision(): void {
  const form = document.querySelector<HTMLElement>('[data-testid="decide"]');
  form?.scrollIntoView({ block: 'start' });
  form?.querySelector<HTMLElement>('input')?.focus({ preventScroll: true });
}

/** What to do, the first step in full and with its way there. */
function Steps({ steps, probe }: { steps: AdvisedStepView[]; probe: ProbeInfo }) {
  const idle = steps.length === 1 && steps[0]!.kind === 'nothing';
  return (
    <div class={`do-now ${idle ? 'idle' : ''}`} data-testid="next-step" data-step={steps[0]?.kind}>
      <h2>{words.probePage.doNow}</h2>
      <ol>{steps.map((s, i) => <li key={s.kind} class={i === 0 ? 'first' : ''}>{s.text}</li>)}</ol>
      {!idle && <div class="inline">{waysOf(steps).map(kind => <Way key={kind} step={kind} probe={probe} />)}</div>}
    </div>
  );
}

/** The ways of all steps, each once, in the order of the steps; writing down what was seen comes last. */
function waysOf(steps: AdvisedStepView[]): NextStep[] {
  const ways = new Map(steps.map(s => [wayOf(s.kind), s.kind]));
  return [...ways].sort(([a], [b]) => Number(a === 'fault') - Number(b === 'fault')).map(([, kind]) => kind);
}

/** Steps that lead to one place share a button. */
function wayOf(step: NextStep): string {
  if (step === 'test' || step === 'repeat' || step === 'test_again' || step === 'other_reagent') return 'check';
  if (step === 'calibrate' || step === 'adjust_panel' || step === 'replace') return 'calibrate';
  return step === 'decide' || step === 'nothing' || step === 'wait' ? step : 'fault';
}

/** Believed, shown and tested side by side: the three that the question is about. */
function Three({ probe, view, last }: { probe: ProbeInfo; view: ProbeView | undefined; last: JudgementView | undefined }) {
  const d = probe.decimals, orp = probe.measurand === 'orp', unit = unitText(probe.unit);
  return (
    <dl class="three">
      <div class="believed"><dt>{words.probePage.believed}</dt>
        <dd data-testid="believed">{view?.believed ? <WithBar x={view.believed} d={d} unit={unit} />
          : <span class="hint">{orp && view?.value != null ? words.probePage.orpAsRead : words.probePage.notBelieved}</span>}</dd></div>
      <div><dt>{words.probePage.shows}</dt><dd><LiveValue probe={probe} limit={limitOf(limitsOfPool(probe.poolId), probe.measurand)} /></dd></div>
      <div><dt>{orp ? words.probePage.expected : words.probePage.lastTest}</dt>
        <dd data-testid="last-test">{last?.test ? <WithBar x={last.test} d={d} unit={unit} /> : <span class="hint">{words.probePage.noTest}</span>}
          {last && <span class="under"><Age at={last.sampledAt} />{last.verdict === 'check_suspect' && <b class="mark"><WarnGlyph />{words.probePage.testDoubted}</b>}</span>}</dd></div>
    </dl>
  );
}

/** Raw, corrected and how far off, for whoever wants the figures. */
function Figures({ probe, view, history }: { probe: ProbeInfo; view: ProbeView | undefined; history: ProbeHistory | null }) {
  const d = probe.decimals, drift = history?.ahead?.drift;
  return (
    <dl class="side-by-side">
      <div><dt>{words.probe.raw}</dt><dd>{fixed(view?.raw, d)}</dd></div>
      <div><dt>{words.probe.corrected}</dt><dd>{fixed(view?.value, d)}</dd></div>
      <div><dt>{words.poolPage.bias}</dt><dd>{view?.bias ? `${signed(view.bias.value, d)} \u00b1 ${fixed(view.bias.u, d)}` : '\u2013'}</dd></div>
      {drift && <div><dt>{words.probePage.drift}, {words.probePage.aMonth}</dt><dd data-testid="drift">{signed(drift.value * daysAMonth, d)} {'\u00b1'} {fixed(drift.u * daysAMonth, d)}</dd></div>}
      {history?.slope && <div><dt>{words.probePage.sensitivity}</dt><dd data-testid="sensitivity">{fixed(history.slope.value * 100, 0)} {'\u00b1'} {fixed(history.slope.u * 100, 0)} %</dd></div>}
      {history?.testOff && <div><dt>{words.probePage.testsOff}</dt><dd data-testid="tests-off">{signed(history.testOff.value, d)} {'\u00b1'} {fixed(history.testOff.u, d)}</dd></div>}
    </dl>
  );
}

const changesWhatWasSaid = (last: JudgementView) => (c: CalibrationView) =>
  c.holdsFrom !== null && c.holdsFrom > last.sampledAt && ((c.status !== 'rejected' && c.status !== 'proposed' && c.kind !== 'verification') || (c.work?.length ?? 0) > 0);

/** The question of the page answered: whom to believe, by what, and what to do. */
export function AnswerCard({ probe, history }: { probe: ProbeInfo; history: ProbeHistory | null }) {
  const view = probeViews.value.get(probe.id);
  const pool = probe.poolId ? allPools.value.get(probe.poolId) : undefined;
  const last = history?.judgements[0];
  // What no test judges has nothing to be held against.
  const unjudged = history !== null && history.limits === null;
  const compared = history?.judgements.find(j => j.test);
  // What a check said before the probe was worked on or corrected is not true of it any more.
  const said = last && history?.calibrations.some(changesWhatWasSaid(last)) ? undefined : last;
  return (
    <section class="sheet card answer-card" data-testid={`probe-${probe.id}`}>
      <div class="probe-top"><div><h1>{nameOf(probe.id)}</h1><p class="hint">{pool ? <a href={link('pool', pool.id)}>{pool.name}</a> : words.poolPage.common}, {words.poolPage.origin[probe.origin]}
        {probe.referenceElectrode && `, ${words.strips.against(probe.referenceElectrode)}`}, {words.probe.range(`${probe.rangeLow}\u2009\u2013\u2009${probe.rangeHigh} ${unitText(probe.unit)}`)}</p></div>
        <StandingMark probeId={probe.id} long /></div>
      {history && <p class={`the-answer w-${history.answer.whom}`} role="status" data-testid="the-answer" data-whom={history.answer.whom}>
        {history.answer.whom === 'either' ? <TickGlyph /> : null}<span>{history.answer.sentence.text}</span></p>}
      {unjudged ? <LiveValue probe={probe} limit={limitOf(limitsOfPool(probe.poolId), probe.measurand)} /> : <Three probe={probe} view={view} last={compared} />}
      {said && <p class="hint"><b>{words.verdict[said.verdict]}.</b> {said.reasons[0]?.text}</p>}
      {view && view.reasons.filter(r => r.text !== said?.reasons[0]?.text).map((r, i) => <p key={i} class="hint">{r.text}</p>)}
      {history && !(unjudged && history.answer.steps[0]?.kind === 'nothing') && <Steps steps={history.answer.steps} probe={probe} />}
      {!unjudged && <Figures probe={probe} view={view} history={history} />}
      {view?.judgedAt && view.pairs > 0 && view.bias && <p class="hint">{words.probePage.restsOn(view.pairs)} <Age at={view.judgedAt} />.</p>}
    </section>
  );
}
