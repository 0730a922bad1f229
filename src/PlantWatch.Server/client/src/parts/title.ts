import { effect } from '@preact/signals';
import { standingAlarms } from '../alarms/order';
import { isDead } from '../live/dead';
import { alarms, allPools, allProbes, allPumps, nameOf, site } from '../live/store';
import { destinations, homeOf } from '../nav/pages';
import { route } from '../router';
import { words } from '../words';

const named = (id: string) => [allPools, allProbes, allPumps].some(all => all.value.has(id));

/** What the page is about: the thing that its address names, else the destination that it lies under. */
function pageName(): string {
  const [key = '', id = ''] = route.value;
  if (key === 'more') return words.pageNames.more;
  return named(id) ? nameOf(id) : destinations.find(d => d.key === homeOf(key))?.entry.name ?? '';
}

/** The tab of the browser names the page, and says what the bar says, for whoever looks elsewhere. */
export function startTitle(): void {
  effect(() => {
    const own = site.value?.name || words.product, calling = standingAlarms(alarms.value).filter(a => a.annunciates).length;
    const said = isDead() ? words.bar.title.dead(own) : calling > 0 ? words.bar.title.calls(calling, own) : own;
    document.title = [pageName(), said].filter(Boolean).join(' \u00b7 ');
  });
}
