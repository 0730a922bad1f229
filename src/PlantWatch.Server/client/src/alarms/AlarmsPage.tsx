import { useEffect, useState } from 'preact/hooks';
import { query } from '../api/http';
import type { AlarmChangeView, AlarmView } from '../contract';
import { dayClock } from '../format/zone';
import { now } from '../live/clock';
import { alarms, circuits, zone } from '../live/store';
import { PriorityGlyph, TickGlyph } from '../parts/Glyph';
import { useComeAndGo } from '../parts/useComeAndGo';
import { usePolled } from '../parts/usePolled';
import { link } from '../router';
import { SoundCard } from '../sound/SoundCard';
import { words } from '../words';
import { AlarmRow } from './AlarmRow';
import { families, inOrder, isAside, type Family } from './order';
import { mayShare, SeveralForm } from './SeveralForm';

function History({ changed }: { changed: string }) {
  const from = new Date(Math.floor(now.peek() / 3_600_000) * 3_600_000 - 7 * 86_400_000).toISOString();
  const { data, failed, reload } = usePolled<AlarmChangeView[]>('/alarms' + query({ from }), 60_000);
  useEffect(() => { if (data) reload(); }, [changed]);
  return (
    <section class="sheet card" data-testid="alarm-history">
      <h2>{words.alarms.history}</h2>
      {data === null ? <p class="hint">{failed ? words.error.unreachable : words.loading}</p> : data.length === 0 ? <p class="hint">{words.alarms.noHistory}</p> : (
        <ul class="history">
          {data.slice(0, 200).map((c, i) => (
            <li key={i}><span class="hint">{dayClock(c.at, zone.value)}</span>
              <span><b>{words.alarmChange[c.change]}</b>{c.by && ` \u2013 ${c.by}`}{c.comment && `: ${c.comment}`}</span>
              <span class="mark"><PriorityGlyph priority={c.alarm.priority} /><span><a href={link('alarm', c.alarm.id)}>{c.alarm.title}</a> <span class="hint">{c.alarm.subjectName}</span></span></span></li>))}
        </ul>)}
    </section>
  );
}

function FamilyRows({ family: { cause, follow } }: { family: Family }) {
  return (
    <>
      <AlarmRow alarm={cause} />
      {follow.length > 0 && <li class="follow"><details data-testid="follow"><summary>{words.alarmList.follow(follow.length)}</summary>
        <ul class="alarm-list">{follow.map(a => <AlarmRow key={a.id} alarm={a} />)}</ul></details></li>}
    </>
  );
}

/** From two on it is worth a form of its own. */
function Several({ all }: { all: AlarmView[] }) {
  const [open, setOpen] = useState(false);
  const may = mayShare(all);
  const { host, onKeyDown } = useComeAndGo(open ? 'several' : null, () => setOpen(false));
  if (!open && may.length < 2) return null;
  return <div ref={host} tabIndex={-1} onKeyDown={onKeyDown}>{open ? <SeveralForm shown={may} onDone={() => setOpen(false)} />
    : <div class="inline"><button type="button" data-opens="several" data-testid="open-several" onClick={() => setOpen(true)}>{words.alarmList.several}</button></div>}</div>;
}

function Standing({ all }: { all: AlarmView[] }) {
  const asks = families(all.filter(a => !isAside(a))), aside = inOrder(all.filter(isAside));
  return (
    <div data-testid="alarms" class="alarm-list">
      <h2>{words.alarmList.asks}</h2>
      <Several all={all} />
      {asks.length === 0 ? <p class="hint">{words.alarmList.nothingAsks}</p> : <ul class="alarm-list" data-testid="alarms-asking">{asks.map(f => <FamilyRows key={f.cause.id} family={f} />)}</ul>}
      {aside.length > 0 && <><h2>{words.alarmList.aside}</h2><ul class="alarm-list" data-testid="alarms-aside">{aside.map(a => <AlarmRow key={a.id} alarm={a} />)}</ul></>}
    </div>
  );
}

export function AlarmsPage() {
  const all = inOrder(alarms.value.filter(a => a.state !== 'normal'));
  return (
    <div class="pages two-columns">
      <section>
        <h1>{words.alarms.title}</h1>
        {circuits.value.size === 0 ? <p class="empty">{words.bar.unknown}</p> : all.length === 0
          ? <p class="empty mark"><TickGlyph />{words.alarms.none}</p>
          : <Standing all={all} />}
      </section>
      <section>
        <SoundCard />
        <History changed={all.map(a => a.id + a.state).join()} />
      </section>
    </div>
  );
}
