import { useMemo } from 'preact/hooks';
import type { AlarmStory, AlarmStrip as Drawn } from '../contract.alarms';
import { serverNow } from '../live/clock';
import { allProbes } from '../live/store';
import { LazyStrips } from '../pool/LazyStrips';
import type { Happening } from '../pool/marks';
import { words } from '../words';

const hour = 3_600_000;

/** From a good hour before it rose to an hour after it was gone; what stands, until now, and a day at most. */
function around({ alarm }: AlarmStory): { from: number; to: number } {
  const from = Date.parse(alarm.raisedAt) - 2 * hour;
  const end = alarm.clearedAt ? Date.parse(alarm.clearedAt) + hour : serverNow();
  return { from, to: Math.min(Math.max(end, from + 4 * hour), from + 24 * hour) };
}

const happeningsOf = (story: AlarmStory): Happening[] => story.changes.map(c => ({ t: Date.parse(c.at), text: [words.alarmChange[c.change], c.by, c.comment].filter(Boolean).join(', ') }));

/** The curve that the alarm is about, with the limit it went over and the moments of the alarm on it. */
export function AlarmStrip({ story, strip }: { story: AlarmStory; strip: Drawn }) {
  const probe = strip.probeId ? allProbes.value.get(strip.probeId) : undefined;
  const happenings = useMemo(() => happeningsOf(story), [story]);
  const limits = useMemo(() => (strip.low === null && strip.high === null ? [] : [{ measurand: strip.measurand, low: strip.low, high: strip.high, source: story.alarm.rule }]), [strip.measurand, strip.low, strip.high]);
  const probes = useMemo(() => (probe ? [probe] : []), [probe]);
  const overlay = useMemo(() => ({ probeId: probe?.id ?? strip.measurand, flowSwitch: null, happenings, legend: words.alarmPage.legend }), [probe, happenings]);
  const window = useMemo(() => around(story), [story.alarm.id, story.live]);
  if (!probe && !strip.poolId) return null;
  return <LazyStrips key={story.alarm.id} poolId={strip.poolId} probes={probes} limits={limits} tests={probe ? [] : [strip.measurand]} fresh={String(story.changes.length)} overlay={overlay} around={window} />;
}
