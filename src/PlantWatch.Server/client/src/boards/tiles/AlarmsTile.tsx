import { families, standingAlarms, type Family } from '../../alarms/order';
import { circuits } from '../../live/store';
import { Age } from '../../parts/Age';
import { PriorityGlyph, TickGlyph } from '../../parts/Glyph';
import { link } from '../../router';
import { words } from '../../words';
import type { TileProps } from './props';
import { wantedOf } from './wanted';

function Line({ family: { cause: a, follow }, wall }: { family: Family; wall: boolean }) {
  return (
    <li class={`alarm-line ${a.acknowledged ? 'seen' : 'unseen'} q-${a.priority}`} data-testid={`line-${a.subject}`}>
      <p class="alarm-line-head"><span class="mark"><PriorityGlyph priority={a.priority} /><b>{words.priority[a.priority]}</b></span> <b class="alarm-line-title">{wall ? a.title : <a href={link('alarm', a.id)}>{a.title}</a>}</b> <span>{a.subjectName}</span></p>
      <p class="hint">{words.alarmState[a.state]}, <Age at={a.raisedAt} />{follow.length > 0 && `; ${words.alarmList.follow(follow.length)}`}</p>
      <p class="alarm-line-todo">{a.action} <span class="hint">({a.timeToRespond})</span></p>
    </li>
  );
}

/** What stands, the gravest that nobody has seen first, with what to do. */
export function AlarmsTile(p: TileProps) {
  const found = families(standingAlarms(wantedOf(p.tile, p.pool)));
  if (circuits.value.size === 0) return <p class="hint">{words.bar.unknown}</p>;
  if (found.length === 0) return <p class="mark quiet"><TickGlyph />{p.tile.atLeast === 'note' ? words.boards.noAlarm : words.boards.noAlarmFrom(words.inText(words.priority[p.tile.atLeast]))}</p>;
  const rest = found.length - p.tile.most;
  return (
    <>
      <ul class="alarm-lines">{found.slice(0, p.tile.most).map(f => <Line key={f.cause.id} family={f} wall={p.wall} />)}</ul>
      {rest > 0 && <p class="hint">{words.overview.more(rest)}</p>}
    </>
  );
}
