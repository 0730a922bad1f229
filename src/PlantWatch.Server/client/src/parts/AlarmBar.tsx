import type { AlarmView, Priority } from '../contract';
import { life } from '../live/connection';
import { alarms, circuits, nameOf, poolViews } from '../live/store';
import { link } from '../router';
import { words } from '../words';
import { Age } from './Age';
import { PriorityGlyph, TickGlyph } from './Glyph';

export const priorities: Priority[] = ['critical', 'high', 'medium', 'low', 'note'];
const aside = ['normal', 'shelved', 'suppressed_by_design', 'out_of_service'];

/** Alarms that ask for something: not shelved, suppressed or out of service. */
export const standingAlarms = (all: AlarmView[]) => all.filter(a => !aside.includes(a.state));

export function AlarmBar() {
  const all = standingAlarms(alarms.value);
  // The worst that nobody has seen, the newest of its kind: a lesser alarm that came later must not hide it.
  const rank = (a: AlarmView) => priorities.indexOf(a.priority);
  const newest = all.filter(a => !a.acknowledged).sort((a, b) => rank(a) - rank(b) || (a.raisedAt < b.raisedAt ? 1 : -1))[0];
  const worst = priorities.find(p => all.some(a => a.priority === p));
  const unknown = circuits.value.size === 0;
  // No alarm from a pool of which nothing is known is no good news.
  const blind = [...poolViews.value.values()].filter(p => p.state === 'unknown').length;
  return (
    <section aria-label={words.bar.label}><a class={`alarm-bar ${worst ? `w-${worst}` : ''}`} href={link('alarms')} data-testid="alarm-bar" data-live={life.value.state}>
      {unknown ? <span>{words.bar.unknown}</span> : all.length === 0 && blind > 0 ? <span>{words.bar.noneButUnknown(blind)}</span> : all.length === 0 ? <span class="mark"><TickGlyph />{words.bar.none}</span> : (
        <span class="counts">
          {priorities.map(p => ({ p, n: all.filter(a => a.priority === p).length })).filter(x => x.n > 0).map(({ p, n }) => (
            <span class="mark" key={p}><PriorityGlyph priority={p} /><b>{n}</b> {words.priority[p].toLowerCase()}</span>))}
        </span>
      )}
      {all.length > 0 && <span class="newest" role="status">{newest
        ? <><span class="sr">{words.bar.newest}: </span><b>{newest.title}</b> <span class="where">{nameOf(newest.subject)}</span></>
        : words.bar.allSeen}</span>}
      {newest && <Age at={newest.raisedAt} />}
    </a></section>
  );
}
