import { families, standingAlarms } from '../alarms/order';
import { alarms } from '../live/store';
import { keptChecks } from '../outbox/checks';
import { route } from '../router';
import { words } from '../words';
import { icons } from './icons';
import { addressOf, destinations, groups, homeOf, type Destination } from './pages';

function Badge({ page }: { page: string }) {
  const n = page === 'alarms' ? families(standingAlarms(alarms.value)).filter(f => !f.cause.acknowledged).length : page === 'check' ? keptChecks.value.length : 0;
  return n > 0 ? <span class="badge">{n}</span> : null;
}

function Item({ page, current }: { page: Destination; current: string | null }) {
  const { name, tab, seldom } = page.entry;
  return (
    <li class={tab ? 'tab' : seldom ? 'beyond-tabs seldom' : 'beyond-tabs'}>
      <a href={addressOf(page.key)} aria-current={page.key === current ? 'page' : undefined} data-testid={`nav-${page.key || 'overview'}`}>
        {tab}<span>{name}<Badge page={page.key} /></span></a>
    </li>
  );
}

/** Wide: the destinations of every day in a row, group by group, and More. On a phone: the tabs and More. */
export function Nav() {
  const here = route.value[0] ?? '';
  const current = homeOf(here);
  const entry = destinations.find(p => p.key === current)?.entry;
  return (
    <nav class="tabs" aria-label={words.nav.label}>
      {groups.map(g => <ul key={g} aria-label={words.pageNames.groups[g]}>{destinations.filter(p => p.entry.group === g).map(p => <Item key={p.key} page={p} current={current} />)}</ul>)}
      <ul class="to-more"><li class="tab"><a href="#/more" class={entry && !entry.tab ? 'holds' : undefined} aria-current={here === 'more' ? 'page' : entry?.seldom ? 'true' : undefined} data-testid="nav-more">{icons.more}<span>{words.pageNames.more}</span></a></li></ul>
    </nav>
  );
}
