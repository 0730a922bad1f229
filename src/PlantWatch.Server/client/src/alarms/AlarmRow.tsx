import { useState } from 'preact/hooks';
import type { AlarmView } from '../contract';
import { clock } from '../format/zone';
import { allPools, allProbes, allPumps, nameOf, zone } from '../live/store';
import { Age } from '../parts/Age';
import { PriorityGlyph } from '../parts/Glyph';
import { link } from '../router';
import { words } from '../words';
import { AcknowledgeForm, ShelveForm } from './AlarmForms';
import { MakeSafeForm } from './MakeSafeForm';
import { isAside } from './order';

function Subject({ alarm }: { alarm: AlarmView }) {
  const name = nameOf(alarm.subject);
  if (allProbes.value.has(alarm.subject)) return <a href={link('probe', alarm.subject)}>{name}</a>;
  const home = alarm.subject.split('/')[0]!;
  const pool = allPools.value.has(home) ? home : null;
  return pool ? <a href={link('pool', pool)}>{name}</a> : <span>{name}</span>;
}

function Past({ alarm }: { alarm: AlarmView }) {
  const w = words.alarms, l = words.alarmList;
  return (
    <p class="hint">{w.raised} <Age at={alarm.raisedAt} />
      {alarm.clearedAt && <>; {w.cleared} <Age at={alarm.clearedAt} /></>}
      {alarm.acknowledgedBy && <>; {w.acknowledgedBy(alarm.acknowledgedBy)} <Age at={alarm.acknowledgedAt} />{alarm.comment && `: ${alarm.comment}`}</>}
      {alarm.shelvedUntil && <>; {w.shelvedBy(alarm.shelvedBy ?? '', clock(alarm.shelvedUntil, zone.value))}</>}
      {alarm.state === 'shelved' && alarm.oneShot && <>, {l.oneShot}</>}{alarm.state === 'shelved' && alarm.shelvedWhy && `: ${alarm.shelvedWhy}`}
      {alarm.state === 'suppressed_by_design' && alarm.suppressedBy && <>; {l.suppressedBy(alarm.suppressedBy)}</>}
      {alarm.state === 'out_of_service' && alarm.outOfServiceBy && <>; {l.outOfService(alarm.outOfServiceBy)} <Age at={alarm.outOfServiceAt} />{alarm.outOfServiceWhy && `: ${alarm.outOfServiceWhy}`}</>}
      {alarm.madeSafe && <>; {words.makeSafe.done(alarm.madeSafe.by)} <Age at={alarm.madeSafe.at} />{alarm.madeSafe.comment && `: ${alarm.madeSafe.comment}`}</>}
      {alarm.latchHeld && !alarm.active && <>; {l.latched}</>}{(alarm.reAlarms ?? 0) > 0 && <>; {l.again(alarm.reAlarms!)}</>}</p>
  );
}

/** The way to what the alarm asks for: a test by hand, or a note on the thing that failed. */
function Next({ alarm }: { alarm: AlarmView }) {
  if (alarm.rule === 'R-070') return <a class="button quiet" href={alarm.poolId ? link('exceptions', alarm.poolId) : link('exceptions')}>{words.exceptions.title}</a>;
  if (allPumps.value.has(alarm.subject)) return <a class="button quiet" href={link('pumps', alarm.subject)}>{words.pumps.write}</a>;
  return alarm.poolId ? <a class="button quiet" href={link('check', alarm.poolId)}>{words.overview.check}</a> : null;
}

/** One alarm: what it is, why it matters, what to do and how long there is; and what a person can do about it here. */
export function AlarmRow({ alarm, brief }: { alarm: AlarmView; brief?: boolean }) {
  const [open, setOpen] = useState<'acknowledge' | 'reset' | 'shelve' | 'unshelve' | 'safe' | null>(null);
  const shelved = alarm.state === 'shelved', aside = isAside(alarm);
  const w = words.alarms;
  const unsafe = alarm.mustBeMadeSafe && alarm.latchHeld && !alarm.madeSafe;
  return (
    <li class={`alarm-row ${alarm.acknowledged || aside ? 'seen' : 'unseen'} q-${alarm.priority}`} data-testid={`alarm-${alarm.subject}`} data-rule={alarm.rule} data-state={alarm.state}>
      <div class="alarm-head">
        <span class="mark"><PriorityGlyph priority={alarm.priority} /><b>{words.priority[alarm.priority]}</b></span>
        <h3>{alarm.title}</h3>
        <span class="alarm-state">{words.alarmState[alarm.state]}</span>
      </div>
      <p class="hint"><Subject alarm={alarm} /> {'\u00b7'} {alarm.rule}</p>
      <dl class="alarm-says">
        <div><dt>{w.cause}</dt><dd>{alarm.cause}</dd></div>
        {!brief && <div><dt>{w.consequence}</dt><dd>{alarm.consequence}</dd></div>}
        <div class="todo"><dt>{w.action}</dt><dd>{alarm.action}</dd></div>
        {!brief && <div><dt>{w.time}</dt><dd>{alarm.timeToRespond}</dd></div>}
      </dl>
      <Past alarm={alarm} />
      {open === null && (
        <div class="inline">
          {!alarm.acknowledged && !shelved && <button type="button" data-testid="ack" onClick={() => setOpen('acknowledge')}>{w.acknowledge}</button>}
          {unsafe && <button type="button" data-testid="make-safe" onClick={() => setOpen('safe')}>{words.makeSafe.open}</button>}
          {alarm.latchHeld && !alarm.active && alarm.acknowledged && !unsafe && <button type="button" data-testid="reset" onClick={() => setOpen('reset')}>{w.reset}</button>}
          {shelved ? <button type="button" data-testid="unshelve" onClick={() => setOpen('unshelve')}>{w.unshelve}</button>
             : alarm.active && !aside && (alarm.shelvable ?? alarm.priority !== 'critical') && <button type="button" class="quiet-button" data-testid="shelve" onClick={() => setOpen('shelve')}>{w.shelve}</button>}
          <Next alarm={alarm} />
        </div>)}
      {(open === 'acknowledge' || open === 'reset' || open === 'unshelve') && <AcknowledgeForm alarm={alarm} verb={open} onDone={() => setOpen(null)} />}
      {open === 'safe' && <MakeSafeForm alarm={alarm} onDone={() => setOpen(null)} />}
      {open === 'shelve' && <ShelveForm alarm={alarm} onDone={() => setOpen(null)} />}
    </li>
  );
}
