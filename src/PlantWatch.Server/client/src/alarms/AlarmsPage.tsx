import { useEffect } from 'preact/hooks';
import { query } from '../api/http';
import type { AlarmChangeView } from '../contract';
import { dayClock } from '../format/zone';
import { now } from '../live/clock';
import { alarms, circuits, nameOf, zone } from '../live/store';
import { PriorityGlyph, TickGlyph } from '../parts/Glyph';
import { usePolled } from '../parts/usePolled';
import { words } from '../words';
import { AlarmRow } from './AlarmRow';
import { inOrder } from './order';

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
              <span class="mark"><PriorityGlyph priority={c.alarm.priority} /><span>{c.alarm.title} <span class="hint">{nameOf(c.alarm.subject)}</span></span></span></li>))}
        </ul>)}
    </section>
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
          : <><h2 class="sr">{words.alarms.standing}</h2><ul class="alarm-list" data-testid="alarms">{all.map(a => <AlarmRow key={a.id} alarm={a} />)}</ul></>}
      </section>
      <History changed={all.map(a => a.id + a.state).join()} />
    </div>
  );
}
