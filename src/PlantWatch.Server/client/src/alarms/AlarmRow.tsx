import type { AlarmView } from '../contract';
import { clock, fullClock } from '../format/zone';
import { allPools, allProbes, zone } from '../live/store';
import { Age } from '../parts/Age';
import { PriorityGlyph } from '../parts/Glyph';
import { link } from '../router';
import { words } from '../words';
import { AlarmActions } from './AlarmActions';
import { isAside } from './order';

export function Subject({ alarm }: { alarm: AlarmView }) {
  const name = alarm.subjectName;
  if (allProbes.value.has(alarm.subject)) return <a href={link('probe', alarm.subject)}>{name}</a>;
  const home = alarm.subject.split('/')[0]!;
  const pool = allPools.value.has(home) ? home : null;
  return pool ? <a href={link('pool', pool)}>{name}</a> : <span>{name}</span>;
}

export function Past({ alarm }: { alarm: AlarmView }) {
  const w = words.alarms, l = words.alarmList;
  return (
    <p class="hint">{w.raised} <Age at={alarm.raisedAt} />
      {alarm.clearedAt && <>; {w.cleared} <Age at={alarm.clearedAt} /></>}
      {alarm.acknowledgedBy && <>; {w.acknowledgedBy(alarm.acknowledgedBy)} <Age at={alarm.acknowledgedAt} />{alarm.comment && `: ${alarm.comment}`}</>}
      {alarm.shelvedUntil && <>; {w.shelvedBy(alarm.shelvedBy ?? '', clock(alarm.shelvedUntil, zone.value))}</>}
      {alarm.state === 'shelved' && alarm.oneShot && <>, {l.oneShot}</>}{alarm.state === 'shelved' && alarm.shelvedWhy && `: ${alarm.shelvedWhy}`}
      {alarm.state === 'suppressed_by_design' && alarm.suppressedBy && <>; {l.suppressedBy(alarm.suppressedBy)}</>}
      {alarm.state === 'out_of_service' && alarm.outOfServiceBy && <>; {l.outOfService(alarm.outOfServiceBy)} <Age at={alarm.outOfServiceAt} />{alarm.outOfServiceUntil && `, ${l.outUntil(fullClock(alarm.outOfServiceUntil, zone.value))}`}{alarm.outOfServiceWhy && `: ${alarm.outOfServiceWhy}`}</>}
      {alarm.madeSafe && <>; {words.makeSafe.done(alarm.madeSafe.by)} <Age at={alarm.madeSafe.at} />{alarm.madeSafe.comment && `: ${alarm.madeSafe.comment}`}</>}
      {alarm.latchHeld && !alarm.active && <>; {l.latched}</>}{(alarm.reAlarms ?? 0) > 0 && <>; {l.again(alarm.reAlarms!)}</>}</p>
  );
}

/** One alarm: what it is, why it matters, what to do and how long there is; and what a person can do about it here. */
export function AlarmRow({ alarm, brief }: { alarm: AlarmView; brief?: boolean }) {
  const w = words.alarms;
  return (
    <li class={`alarm-row ${alarm.acknowledged || isAside(alarm) ? 'seen' : 'unseen'} q-${alarm.priority}`} data-testid={`alarm-${alarm.subject}`} data-rule={alarm.rule} data-state={alarm.state}>
      <div class="alarm-head">
        <span class="mark"><PriorityGlyph priority={alarm.priority} /><b>{words.priority[alarm.priority]}</b></span>
        <h3><a class="alarm-link" href={link('alarm', alarm.id)}>{alarm.title}</a></h3>
        <span class="alarm-state">{words.alarmState[alarm.state]}</span>
      </div>
      <p class="hint"><Subject alarm={alarm} /> {'\u00b7'} <a href={link('rules', alarm.rule)}>{alarm.rule}</a></p>
      <dl class="alarm-says">
        <div><dt>{w.cause}</dt><dd>{alarm.cause}</dd></div>
        {!brief && <div><dt>{w.consequence}</dt><dd>{alarm.consequence}</dd></div>}
        <div class="todo"><dt>{w.action}</dt><dd>{alarm.action}</dd></div>
        {!brief && <div><dt>{w.time}</dt><dd>{alarm.timeToRespond}</dd></div>}
      </dl>
      <Past alarm={alarm} />
      <AlarmActions alarm={alarm} />
    </li>
  );
}
