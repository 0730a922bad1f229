import type { ReagentView } from '../contract.reagent';
import { dayClock } from '../format/zone';
import { zone } from '../live/store';
import { PoolGlyph } from '../parts/Glyph';
import { usePolled } from '../parts/usePolled';
import { link } from '../router';
import { words } from '../words';

const w = words.reagents;

/** Reagents that are out of date or will be within two weeks. */
export function DueReagents() {
  const { data } = usePolled<ReagentView[]>('/reagents', 300_000);
  const due = (data ?? []).filter(r => r.word === 'out_of_date' || r.word === 'order');
  if (due.length === 0) return null;
  return (
    <ul class="due due-kit sheet" data-testid="due-reagents">
      {due.map(r => <li key={r.id}><PoolGlyph state="due" /><a class="due-probe" href={link('reagents')}>{r.word === 'order' ? w.due.order(r.name, dayClock(r.goodUntil!, zone.value)) : w.due.out_of_date(r.name)}</a></li>)}
    </ul>
  );
}
