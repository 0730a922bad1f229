import { words } from '../words';
import { Habits } from './Habits';
import { addressOf, destinations, groups } from './pages';

/** Every destination in its group: what the bottom bar of a phone has no room for. */
export function MorePage() {
  return (
    <div class="narrow more" data-testid="more">
      <h1>{words.pageNames.moreTitle}</h1>
      {groups.map(g => ({ g, of: destinations.filter(p => p.entry.group === g) })).filter(x => x.of.length > 0).map(({ g, of }) => (
        <section class="sheet card" key={g}><h2>{words.pageNames.groups[g]}</h2>
          <ul>{of.map(p => <li key={p.key}><a href={addressOf(p.key)} data-testid={`more-${p.key || 'overview'}`}>{p.entry.name}</a></li>)}</ul>
        </section>))}
      <Habits />
    </div>
  );
}
