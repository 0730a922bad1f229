import { useState } from 'preact/hooks';
import { query } from '../api/http';
import type { PumpInfo } from '../contract';
import type { JobView } from '../contract.jobs';
import type { PumpPageView, PumpVerdictView } from '../contract.pump';
import { fixed, signed } from '../format/number';
import { dayClock } from '../format/zone';
import { JobList } from '../jobs/JobList';
import { allPumps, site, zone } from '../live/store';
import { TickGlyph, WarnGlyph } from '../parts/Glyph';
import { usePolled } from '../parts/usePolled';
import { lazyPart } from '../parts/lazyPart';
import { go, link } from '../router';
import { words } from '../words';
import { PumpCard } from './PumpCard';
import type { PumpStripsProps } from './PumpStrips';

const w = words.pumpPage;
const { Lazy: LazyPumpStrips } = lazyPart<PumpStripsProps>(() => import('./PumpStrips'));
const litres = (value: number) => `${fixed(value, value < 10 ? 2 : 1)}\u00a0L`;
// What is more certain than so much is not told more certain.
const percent = (share: number) => share < 0.01 ? w.hardly : `${fixed(Math.min(99.9, 100 * share), share > 0.99 ? 1 : 0)}\u00a0%`;

function Verdict({ verdict: v }: { verdict: PumpVerdictView }) {
  const ofPh = v.trouble.startsWith('pump.acid') || v.trouble === 'pump.products_swapped';
  const facts = [
    v.since && `${w.since} ${dayClock(v.since, zone.value)}`, v.litres !== null && (v.litres < 0 ? w.unasked(litres(-v.litres)) : w.missing(litres(v.litres))),
    ofPh && v.expected !== null && v.observed !== null && w.moved(signed(v.expected, 2), signed(v.observed, 2)), v.certainty !== null && w.certain(percent(v.certainty)),
  ].filter(Boolean);
  return (
    <li class="verdict not-well" data-testid={`pump-trouble-${v.trouble}`}>
      <p class="mark"><WarnGlyph /><b>{v.text}</b></p>
      {facts.length > 0 && <p class="hint">{facts.join('; ')}</p>}
      <p><span class="label">{w.action}:</span> {v.action}</p>
      {v.alarmId && <div class="inline"><a class="button" href={link('alarm', v.alarmId)}>{w.toAlarm}</a></div>}
    </li>
  );
}

/** What is said when nothing stands: that it cannot be told, not yet, or that it is well. */
function Otherwise({ page }: { page: PumpPageView }) {
  const i = page.insight;
  if (page.lacks.length > 0) return <><p>{w.notJudged}</p><ul class="plain" data-testid="pump-lacks">{page.lacks.map(l => <li key={l.text}>{l.text}</li>)}</ul><p class="hint">{w.seeFile}</p></>;
  if (!i) return <p class="hint">{w.waiting}</p>;
  if (i.daysLearned < i.daysWanted) return <p data-testid="pump-learning">{w.learning(fixed(i.daysLearned, 1), fixed(i.daysWanted, 0))}</p>;
  return <p class="mark" data-testid="pump-well"><TickGlyph /><span>{w.well} <span class="hint">{w.suspicion(percent(i.suspicion))}</span></span></p>;
}

function Amounts({ page, hours }: { page: PumpPageView; hours: number }) {
  const span = w.spans[hours]!;
  const row = (name: string, value: number | null, more?: string) => <><dt>{name}</dt><dd>{value === null ? w.unknown : <b>{litres(value)}</b>}{more && `, ${more}`}</dd></>;
  return (
    <section class="sheet card" data-testid="pump-amounts"><h2>{w.amounts}</h2>
      <dl class="facts">{row(w.today, page.todayLitres, page.dailyLimitLitres === null ? undefined : w.limit(litres(page.dailyLimitLitres)))}{row(w.over(span), page.drivenLitres)}{row(w.fell(span), page.tankFellLitres)}</dl>
      <p class="hint">{w.beside}</p>
    </section>
  );
}

function Pump({ pump }: { pump: PumpInfo }) {
  const [hours, setHours] = useState(24);
  const { data, failed, problem } = usePolled<PumpPageView>(`/pumps/${encodeURIComponent(pump.id)}` + query({ hours }), 30_000);
  const jobs = usePolled<JobView[]>('/jobs' + query({ asset: pump.id }), 60_000);
  return (
    <div class="pool-page" data-testid="pump-page">
      <div class="side">
        <section class="sheet card"><h1 class="sr">{pump.name}</h1><ul class="pump-list"><PumpCard pump={pump} small own /></ul></section>
        {failed && <p class="notice" role="status" data-testid="kept-view">{data ? w.kept : problem?.title ?? words.error.unreachable}</p>}
        {data && <section class="sheet card" data-testid="pump-verdict"><h2>{w.verdict}</h2>
          {data.verdicts.length > 0 ? <ul class="verdicts">{data.verdicts.map(v => <Verdict key={v.trouble} verdict={v} />)}</ul> : <Otherwise page={data} />}</section>}
        {data && <Amounts page={data} hours={hours} />}
        <section class="sheet card"><div class="pump-head"><h2>{w.jobs}</h2><a class="button" href={link('pumps', pump.id)} data-testid={`note-${pump.id}`}>{w.newJob}</a></div>
          {jobs.data ? <JobList jobs={jobs.data.slice(0, 10)} onOpen={() => go('pumps', pump.id)} /> : <p class="hint">{jobs.failed ? words.error.unreachable : words.loading}</p>}</section>
      </div>
      <div class="wide">
        <section class="sheet strips"><h2 class="sr">{w.course}</h2>
          <div class="strips-bar"><div class="segments" role="group" aria-label={w.range}>
            {Object.keys(w.spans).map(Number).map(h => <button key={h} type="button" class="slim" data-testid={`pump-range-${h}`} aria-pressed={h === hours} onClick={() => setHours(h)}>{w.spans[h]}</button>)}</div></div>
          {data ? <LazyPumpStrips page={data} /> : <p class="empty">{failed ? words.error.unreachable : words.loading}</p>}
          <p class="hint strips-keys">{w.legend}</p>
        </section>
        {data && data.marks.length > 0 && <section class="sheet card" data-testid="pump-marks"><h2>{w.marks}</h2>
          <ul class="plain">{data.marks.map(m => <li key={m.at + m.text}><span class="hint">{dayClock(m.at, zone.value)}</span> {w.kinds[m.kind]}: {m.text}</li>)}</ul></section>}
      </div>
    </div>
  );
}

/** A dosing pump: asked and driven, what the water did, its tank, its alarms and jobs. */
export function PumpPage({ id }: { id: string }) {
  const pump = allPumps.value.get(id);
  if (pump) return <Pump key={id} pump={pump} />;
  return <p class="empty">{site.value ? words.pageMissing : words.overview.waiting} <a href="#/">{words.back}</a></p>;
}
