import { fixed } from '../format/number';
import { useState } from 'preact/hooks';
import { query } from '../api/http';
import type { LimitAlarm } from '../contract.whatIfLimits';
import { dayClock } from '../format/zone';
import { zone } from '../live/store';
import { theme } from '../parts/theme';
import { words } from '../words';

const w = words.whatIfLimits;
const hour = 3_600_000;
const longest = 36 * hour;

const lengthOf = (minutes: number) => minutes < 90 ? w.minutes(fixed(minutes, minutes < 10 ? 1 : 0)) : w.hours(fixed(minutes / 60, 1));
const isDark = () => theme.value === 'dark' || (theme.value === 'auto' && matchMedia('(prefers-color-scheme: dark)').matches);

/** The pool's strips around an alarm; drawn only when somebody looks. */
function Strips({ alarm }: { alarm: LimitAlarm }) {
  const [open, setOpen] = useState(false);
  if (!alarm.pool) return null;
  const start = Date.parse(alarm.from) - hour, end = Math.min((alarm.to ? Date.parse(alarm.to) : Date.parse(alarm.from) + alarm.minutes * 60_000) + hour, start + longest);
  const source = () => `/api/v1/charts/pools/${encodeURIComponent(alarm.pool!)}.svg` + query({ from: new Date(start).toISOString(), to: new Date(end).toISOString(), width: 900, theme: isDark() ? 'dark' : 'light' });
  return (
    <details class="alarm-strips" onToggle={e => setOpen(e.currentTarget.open)}><summary>{w.strip}</summary>
      {open && <img src={source()} alt={w.stripOf(alarm.cause.text)} loading="lazy" />}</details>);
}

export function AlarmsOf({ alarms, all }: { alarms: LimitAlarm[]; all: number }) {
  if (alarms.length === 0) return <p class="hint">{w.none}</p>;
  return <>
    <ol class="compared">{alarms.map(a => (
      <li key={a.rule + a.subject + a.from}>
        <p><b>{a.title}</b> <span class="hint">{a.rule} {'\u00b7'} {words.priority[a.priority]} {'\u00b7'} {a.subjectName}</span></p>
        <p>{a.cause.text}</p>
        <p class="hint">{dayClock(a.from, zone.value)} {'\u00b7'} {a.to === null ? w.stands : w.stood(lengthOf(a.minutes))}{!a.called && <> {'\u00b7'} {w.silent}</>}</p>
        <Strips alarm={a} />
      </li>))}</ol>
    {alarms.length < all && <p class="hint">{w.firstOf(alarms.length, all)}</p>}
  </>;
}
