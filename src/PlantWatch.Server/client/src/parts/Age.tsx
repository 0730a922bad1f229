import { ageAt, span } from '../format/age';
import { fullClock } from '../format/zone';
import { now } from '../live/clock';
import { zone } from '../live/store';
import { words } from '../words';

/** How old something is, counted on by the second; the exact time on the site's clock stands in its title. */
export function Age({ at, bare }: { at: string | number | null | undefined; bare?: boolean }) {
  const age = ageAt(now.value, at);
  if (age === null || at === null || at === undefined) return <span class="age">{words.never}</span>;
  const text = span(age);
  return <time class="age" title={fullClock(at, zone.value)}>{bare ? text : age < 2_000 ? words.justNow : words.ago(text)}</time>;
}
