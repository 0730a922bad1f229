import { useEffect } from 'preact/hooks';
import type { AlarmView } from '../contract';
import type { AlarmStory } from '../contract.alarms';
import { dayClock, fullClock } from '../format/zone';
import { alarms, circuits, zone } from '../live/store';
import { Age } from '../parts/Age';
import { PriorityGlyph } from '../parts/Glyph';
import { usePolled } from '../parts/usePolled';
import { link } from '../router';
import { words } from '../words';
import { AlarmActions } from './AlarmActions';
import { Past, Subject } from './AlarmRow';
import { AlarmStrip } from './AlarmStrip';
import { isAside } from './order';

const w = words.alarmPage;

/** What it is, since when, what to do about it, and what may be done with it here. */
function Head({ story, alarm, reload }: { story: AlarmStory | null; alarm: AlarmView; reload: () => void }) {
  const says = words.alarms;
  return (
    <article class={`alarm-row alarm-head-card ${alarm.acknowledged || isAside(alarm) ? 'seen' : 'unseen'} q-${alarm.priority}`} data-testid={`alarm-${alarm.subject}`} data-rule={alarm.rule} data-state={alarm.state}>
      <div class="alarm-head"><span class="mark"><PriorityGlyph priority={alarm.priority} /><b>{words.priority[alarm.priority]}</b></span><h1>{alarm.title}</h1><span class="alarm-state">{words.alarmState[alarm.state]}</span></div>
      <p><Subject alarm={alarm} /> {'\u00b7'} {w.since} {fullClock(alarm.raisedAt, zone.value)} <span class="hint">(<Age at={alarm.raisedAt} />)</span></p>
      {story?.live === false && <p class="notice" data-testid="alarm-over">{w.over}{story.newerId && <> <a href={link('alarm', story.newerId)}>{w.newer}</a></>}</p>}
      <dl class="alarm-says">
        <div><dt>{says.cause}</dt><dd>{alarm.cause}</dd></div>
        <div class="todo"><dt>{says.action}</dt><dd>{alarm.action}</dd></div>
        <div><dt>{says.time}</dt><dd>{alarm.timeToRespond}</dd></div>
        <div><dt>{says.consequence}</dt><dd>{alarm.consequence}</dd></div>
      </dl>
      <Past alarm={alarm} />
      {story?.live !== false && <AlarmActions alarm={alarm} page onDone={reload} />}
    </article>
  );
}

function TheRule({ story }: { story: AlarmStory }) {
  const { alarm } = story;
  return (
    <section class="sheet card" data-testid="alarm-rule">
      <h2>{w.rule}</h2>
      <p><b>{alarm.rule}</b> {story.sentence}</p>
      <dl class="facts"><dt>{w.usual}</dt><dd>{story.usualCause}</dd><dt>{w.clears}</dt><dd>{story.clears}</dd></dl>
      <p><a class="line-link" href={link('rules', alarm.rule)}>{w.allRules}</a></p>
    </section>
  );
}

function Linked({ all, title, testId }: { all: AlarmView[]; title: string; testId: string }) {
  return all.length === 0 ? null : (
    <section class="sheet card" data-testid={testId}><h2>{title}</h2>
      <ul class="linked">{all.map(a => <li key={a.id}><a class="line-link" href={link('alarm', a.id)}><PriorityGlyph priority={a.priority} /><span><b>{a.title}</b> <span class="hint">{words.alarmState[a.state]}</span><br />{a.cause}</span></a></li>)}</ul>
    </section>
  );
}

function History({ story }: { story: AlarmStory }) {
  return (
    <section class="sheet card" data-testid="alarm-history">
      <h2>{w.history}</h2>
      {story.changes.length === 0 ? <p class="hint">{w.noHistory}</p> : (
        <ol class="history">{story.changes.map((c, i) => (
          <li key={i}><span class="hint">{dayClock(c.at, zone.value)}</span><span><b>{words.alarmChange[c.change]}</b>{c.by && ` \u2013 ${c.by}`}{c.comment && `: ${c.comment}`}</span>
            {c.change === 'raised' && <span class="hint">{c.alarm.cause}</span>}</li>))}</ol>)}
      <h3>{w.earlier}</h3>
      {story.earlier.length === 0 ? <p class="hint">{w.noEarlier}</p>
        : <ul class="history" data-testid="alarm-earlier">{story.earlier.slice(0, 20).map(e => <li key={e.id}><a class="line-link" href={link('alarm', e.id)}>{dayClock(e.raisedAt, zone.value)}</a><span>{e.cause}</span></li>)}</ul>}
    </section>
  );
}

function Alarm({ id }: { id: string }) {
  const live = alarms.value.find(a => a.id === id);
  const { data, failed, problem, reload } = usePolled<AlarmStory>('/alarms/' + encodeURIComponent(id), 60_000);
  const key = live ? `${live.state} ${live.acknowledgedAt} ${live.reAlarms} ${live.latchHeld} ${live.cause}` : 'over';
  const linked = alarms.value.filter(a => a.consequenceOf === id).map(a => a.id).join();
  useEffect(() => { if (data) reload(); }, [key, linked, live?.consequenceOf]);
  const alarm = live ?? data?.alarm;
  if (!alarm) return <p class="empty" role="status">{problem?.status === 404 ? w.gone : failed ? words.error.unreachable : words.loading} <a href={link('alarms')}>{w.back}</a></p>;
  return (
    <div class="alarm-page">
      <p><a class="line-link" href={link('alarms')}>{'\u2039'} {w.back}</a></p>
      {failed && <p class="notice" role="status" data-testid="kept-view">{w.kept}</p>}
      <Head story={data && (live || !data.live) ? data : null} alarm={alarm} reload={reload} />
      {data?.strip && <section data-testid="alarm-strip"><AlarmStrip story={data} strip={data.strip} /></section>}
      {data && <div class="alarm-parts">
        <div class="stack"><Linked all={data.cause ? [data.cause] : []} title={w.cause} testId="alarm-cause" /><Linked all={data.consequences} title={w.consequences} testId="alarm-consequences" /><TheRule story={data} /></div>
        <History story={data} />
      </div>}
    </div>
  );
}

/** One alarm, standing or over. */
export function AlarmPage({ id }: { id: string }) {
  if (circuits.value.size === 0) return <p class="empty">{words.bar.unknown} <a href={link('alarms')}>{w.back}</a></p>;
  return <Alarm key={id} id={id} />;
}
