import type { DueView, Measurand } from '../contract';
import { clock } from '../format/zone';
import { zone } from '../live/store';
import { PoolGlyph } from '../parts/Glyph';
import { words } from '../words';

export const list = (what: Measurand[]) => what.map(m => words.measurand[m]).join(', ');

/** The checks that are due, one a line. */
export function DueLine({ due }: { due: DueView[] }) {
  if (due.length === 0) return null;
  return (
    <ul class="due">
      {due.map((d, i) => (
        <li key={i} class={d.overdue ? 'overdue' : ''}>
          <PoolGlyph state="due" />
          <span><b>{d.overdue ? words.overview.overdue : words.overview.due}:</b> {list(d.what)} ({clock(d.dueAt, zone.value)})</span>
        </li>))}
    </ul>
  );
}
