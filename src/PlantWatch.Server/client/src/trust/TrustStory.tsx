import { useEffect } from 'preact/hooks';
import type { SignView, StepView, TrustStoryView } from '../contract.trust';
import { fixed, unitText } from '../format/number';
import { dayClock } from '../format/zone';
import { now } from '../live/clock';
import { poolViews, probeViews, zone } from '../live/store';
import { Age } from '../parts/Age';
import { TickGlyph, WarnGlyph } from '../parts/Glyph';
import { usePolled } from '../parts/usePolled';
import { words } from '../words';
import { Know } from '../parts/Know';
import { Sides } from './Sides';

export const calm = (story: TrustStoryView) => story.answer === 'all_agree' || story.answer === 'water_changed';

function Step({ step }: { step: StepView }) {
  const [what, ...tells] = step.what;
  return <li data-testid={`step-${step.act}`}><b>{what?.text}</b> <span class="hint">{words.trust.minutes(step.minutes)}</span>{tells.map(t => <span key={t.code} class="hint block">{t.text}</span>)}</li>;
}

function Between({ story }: { story: TrustStoryView }) {
  const ranges = story.plausible.map(p => `${words.measurand[p.measurand]} ${fixed(p.low, 2)}\u2009\u2013\u2009${fixed(p.high, 2)}${p.measurand === 'ph' ? '' : '\u00a0' + unitText('mg/L')}`);
  return <p data-testid="plausible">{words.trust.between} <b>{ranges.join(', ')}</b>. {words.trust.worse}</p>;
}

/** How likely each part is to be wrong: a bar each, nobody first when all is well. */
function WhoMayBeWrong({ story }: { story: TrustStoryView }) {
  return (
    <ul class="who-wrong" aria-label={words.trust.whoMayBeWrong}>{story.explanations.filter(e => e.probability >= 0.02).map(e => (
      <li key={e.part}><span>{words.trust.part[e.part]}</span><span class="who-bar"><i style={{ width: `${Math.round(e.probability * 100)}%` }} /></span><span class="n">{fixed(e.probability * 100, 0)} %</span></li>))}</ul>
  );
}

function Sign({ sign }: { sign: SignView }) {
  const speaks = sign.part === 'none' ? '' : words.trust.speaks(words.trust.part[sign.part], sign.ratio);
  return <li>{sign.what.text}{speaks && <span class="hint"> ({speaks})</span>}</li>;
}

/** The two that weigh most stand open; the rest, and how the odds are shared, for whoever asks. */
function Signs({ story }: { story: TrustStoryView }) {
  const weighty = calm(story) ? [] : story.signs.filter(s => s.part !== 'none' && Math.abs(Math.log(s.ratio)) > 0.5).slice(0, 2);
  return <>
    {weighty.length > 0 && <ul class="plain" data-testid="weighty">{weighty.map((s, i) => <Sign key={i} sign={s} />)}</ul>}
    <details><summary>{words.trust.whatSpeaks}</summary>
      <WhoMayBeWrong story={story} />
      <ul class="plain">{story.signs.filter(s => !weighty.includes(s)).map((s, i) => <Sign key={i} sign={s} />)}</ul>
      <Sides story={story} />
    </details>
  </>;
}

function Told({ story }: { story: TrustStoryView }) {
  const [answer, ...more] = story.says;
  const late = story.testBy !== null && Date.parse(story.testBy) < now.value;
  return (
    <>
      <p class="hint">{story.sampledAt ? <>{words.trust.byCheck} {dayClock(story.sampledAt, zone.value)}, <Age at={story.sampledAt} /></> : words.trust.noCheck}</p>
      <p class="mark story-answer">{calm(story) ? <TickGlyph /> : <WarnGlyph />}<b data-testid="story-answer">{answer?.text}</b></p>
      {story.weight !== 'none' && <p class="hint">{words.trust.odds(words.trust.weight[story.weight], story.odds)}</p>}
      {story.signs.length > 0 && !calm(story) && <Signs story={story} />}
      {more.map(s => <p key={s.code}>{s.text}</p>)}
      {story.testBy && <div class={`notice${late ? ' bad' : ''}`} data-testid="test-by"><b>{(late ? words.trust.testLate : words.trust.testBy)(dayClock(story.testBy, zone.value))}</b>{story.testWhy && <> {story.testWhy.text}</>}</div>}
      {story.plausible.length > 0 && <Between story={story} />}
      {story.steps.length > 0 && <><h3>{words.trust.next}</h3><ol class="story-steps">{story.steps.map((s, i) => <Step key={i} step={s} />)}</ol><p class="hint">{words.trust.advice}</p></>}
      {story.signs.length > 0 && calm(story) && <Signs story={story} />}
    </>
  );
}

/** The story of a pool, asked for anew when a test or a standing changed. */
export function useTrust(poolId: string): TrustStoryView | null {
  const { data, reload } = usePolled<TrustStoryView>(`/pools/${encodeURIComponent(poolId)}/trust`, 60_000);
  const tests = poolViews.value.get(poolId)?.manual.map(m => `${m.checkId}${m.suspect}`).join();
  const standings = [...probeViews.value.values()].map(p => `${p.standing}${p.judgedAt}${p.calibration?.id}`).join();
  useEffect(() => { if (data) reload(); }, [tests, standings]);
  return data;
}

/**
 * One story of a pool: which to believe, how sure that is, what to do next and what speaks for it. Of one check only, when it is asked for; and only while
 * a question is open, where another answer stands beside it already.
 */
export function TrustStory({ poolId, checkId, onlyOpen }: { poolId: string; checkId?: string; onlyOpen?: boolean }) {
  const data = useTrust(poolId);
  if (!data || (checkId && data.checkId !== checkId) || (onlyOpen && calm(data))) return null;
  return (
    <section class={`sheet card story${calm(data) ? '' : ' open-question'}`} data-testid="trust-story" data-answer={data.answer}>
      <div class="card-head"><h2>{words.trust.title}</h2><Know of={words.trust.title} tell={() => ({ ...words.know.trust, age: data.sampledAt ? <Age at={data.sampledAt} /> : undefined })} testId="trust" /></div>
      <Told story={data} />
    </section>
  );
}
