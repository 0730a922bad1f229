import type { ReagentView } from '../contract.reagent';
import { fullClock } from '../format/zone';
import { zone } from '../live/store';
import { WarnGlyph } from '../parts/Glyph';
import { usePolled } from '../parts/usePolled';
import { link } from '../router';
import { words } from '../words';

const w = words.jobs;

/** When reagents, buffers and check solutions have to be replaced, soonest first; those nobody has noted a lot of at the end. */
export function KitDates() {
  const { data } = usePolled<ReagentView[]>('/reagents', 300_000);
  if (!data || data.length === 0) return null;
  const inOrder = [...data].sort((a, b) => (a.goodUntil ?? '9').localeCompare(b.goodUntil ?? '9'));
  return (
    <div class="sheet card" data-testid="kit-dates"><div class="card-head"><h2>{w.kit}</h2><a href={link('reagents')}>{w.toKit}</a></div>
      <ul class="handover-list">{inOrder.map(r => (
        <li key={r.id}><span class="mark">{r.word === 'out_of_date' && <WarnGlyph />}<span><b>{r.name}</b>: {r.goodUntil ? w.replaceBy(fullClock(r.goodUntil, zone.value)) : w.noLot}</span></span>
          {r.word === 'out_of_date' && <span class="hint">{r.why?.text}</span>}{r.word === 'order' && <span class="hint">{w.orderNow}</span>}</li>))}</ul></div>
  );
}
