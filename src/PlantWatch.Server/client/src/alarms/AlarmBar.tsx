import { effect } from '@preact/signals';
import { life } from '../live/connection';
import { isDead } from '../live/dead';
import { alarms, circuits, poolViews, site } from '../live/store';
import { Age } from '../parts/Age';
import { PriorityGlyph, TickGlyph, WarnGlyph } from '../parts/Glyph';
import { link } from '../router';
import { SoundButton } from '../sound/SoundButton';
import { words } from '../words';
import { barOf, type BarSays } from './bar';
import { standingAlarms } from './order';

const w = words.bar;

function Counts({ says }: { says: BarSays }) {
  return <span class="counts">{says.counts.map(c => <span class="mark" key={c.priority}><PriorityGlyph priority={c.priority} /><b>{c.n}</b><span class="bar-word"> {words.inText(words.priority[c.priority])}</span></span>)}
    {says.counts.length > 1 && <span class="bar-more">+{says.counts.slice(1).reduce((sum, c) => sum + c.n, 0)}</span>}</span>;
}

/** Without an alarm: that there is none, as far as that can be said. */
function NoAlarm({ says, blind }: { says: BarSays; blind: number }) {
  if (says.kind === 'unknown') return <span class="newest">{w.unknown}</span>;
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

/** One line, always in sight: the gravest alarm that calls, how many stand, or that nothing can be said. `plain` leads nowhere and has no sound to be turned on. */
export function AlarmBar({ plain }: { plain?: boolean }) {
  const blind = [...poolViews.value.values()].filter(p => p.state === 'unknown').length;
  const says = barOf(alarms.value, circuits.value.size > 0, isDead(), blind);
  const kind = says.dead ? 'dead' : says.calls ? `calls w-${says.shown!.priority}` : says.counts[0] ? `w-${says.counts[0].priority}` : '';
  const inside = <>
    {says.dead && <b class="mark bar-dead" data-testid="bar-dead"><WarnGlyph />{w.dead}</b>}
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

/** The tab of the browser says it too, for whoever looks elsewhere. */
export function startTitle(): void {
  effect(() => {
    const name = site.value?.name, own = name ? `${name} \u00b7 ${words.product}` : words.product;
    const calling = standingAlarms(alarms.value).filter(a => a.annunciates).length;
    document.title = isDead() ? w.title.dead(own) : calling > 0 ? w.title.calls(calling, own) : own;
  });
}
