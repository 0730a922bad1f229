import { life } from '../live/connection';
import { isDead } from '../live/dead';
import { asHeard } from '../live/heard';
import { alarms, circuits, poolViews, site } from '../live/store';
import { Age } from '../parts/Age';
import { PriorityGlyph, TickGlyph, WarnGlyph } from '../parts/Glyph';
import { link } from '../router';
import { SoundButton } from '../sound/SoundButton';
import { words } from '../words';
import { barOf, type BarSays, type Known } from './bar';

const w = words.bar;

function Counts({ says }: { says: BarSays }) {
  return <span class="counts">{says.counts.map(c => <span class="mark" key={c.priority}><PriorityGlyph priority={c.priority} /><b>{c.n}</b><span class="bar-word"> {words.inText(words.priority[c.priority])}</span></span>)}
    {says.counts.length > 1 && <span class="bar-more" aria-hidden="true">{w.more(says.counts.slice(1).reduce((sum, c) => sum + c.n, 0))}</span>}</span>;
}

/** Without an alarm: that there is none, as far as that can be said. */
function NoAlarm({ says, blind }: { says: BarSays; blind: number }) {
  if (says.kind === 'unknown' || says.kind === 'nothing') return <span class="newest">{w[says.kind]}</span>;
  const text = says.kind === 'blind' ? w.noneButUnknown(blind) : w.none;
  return <span class="newest mark">{says.kind === 'none' && !says.dead && <TickGlyph />}<span>{says.dead ? w.noneThen : text}{says.outOfService > 0 && ` \u00b7 ${w.outOfService(says.outOfService)}`}</span></span>;
}

function Named({ says }: { says: BarSays }) {
  const a = says.shown;
  return (
    <span class="newest" role="status">{a
      ? <><span class="bar-state" data-testid="bar-state">{w.state[a.state]}</span> <b>{a.title}</b> <span class="where">{a.subjectName}</span></>
      : w.allSeen}</span>
  );
}

/** Whether there is anything to be watched, as far as it is known. */
const knownOf = (): Known => circuits.value.size > 0 && poolViews.value.size > 0 ? 'known' : site.value?.circuits.every(c => c.pools.length === 0) ? 'no_plant' : 'not_yet';

/** One line, always in sight: the gravest alarm that calls, how many stand, or that nothing can be said. `plain` leads nowhere and has no sound to be turned on. */
export function AlarmBar({ plain }: { plain?: boolean }) {
  const blind = [...poolViews.value.values()].filter(p => p.state === 'unknown').length;
  const dead = isDead();
  const says = barOf(alarms.value, knownOf(), dead || asHeard.value !== null, blind);
  const kind = says.dead ? 'dead' : says.calls ? `calls w-${says.shown!.priority}` : says.counts[0] ? `w-${says.counts[0].priority}` : '';
  const inside = <>
    {says.dead && <b class="mark bar-dead" data-testid="bar-dead"><WarnGlyph />{dead ? w.dead : words.live.connecting}</b>}
    {says.kind === 'alarms' ? <><Counts says={says} /><Named says={says} /></> : <NoAlarm says={says} blind={blind} />}
    {says.shown && <Age at={says.shown.raisedAt} bare />}
  </>;
  const facts = { class: 'alarm-bar', 'data-testid': 'alarm-bar', 'data-live': life.value.state, 'data-calls': says.calls };
  return (
    <section aria-label={w.label} class={`bar-line ${kind}`}>
      {plain ? <div {...facts}>{inside}</div> : <a {...facts} href={says.shown ? link('alarm', says.shown.id) : link('alarms')}>{inside}</a>}
      {!plain && <SoundButton />}
    </section>
  );
}
