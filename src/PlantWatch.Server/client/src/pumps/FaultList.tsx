import type { FaultNote } from '../contract';
import { nameOf } from '../live/store';
import { Age } from '../parts/Age';
import { words } from '../words';

/** Fault notes; the newest version of each. */
export function FaultList({ notes, onOpen }: { notes: FaultNote[]; onOpen: (note: FaultNote) => void }) {
  const seen = new Set<string>();
  const newest = [...notes].sort((a, b) => (a.at < b.at ? 1 : -1)).filter(n => !seen.has(n.id) && seen.add(n.id));
  if (newest.length === 0) return <p class="hint">{words.pumps.noNotes}</p>;
  return (
    <ul class="fault-list">
      {newest.map(n => (
        <li key={n.id} class={`fault f-${n.state}`} data-testid={`fault-${n.asset}`} data-state={n.state}>
          <div class="pump-head"><b>{nameOf(n.asset)}</b><span class="fault-state">{words.fault[n.state]}</span></div>
          <p>{n.seen}</p>
          {n.done && <p><span class="label">{words.pumps.done}:</span> {n.done}</p>}
          <p class="hint">{n.by}, <Age at={n.at} />{n.alarmId && `; ${words.pumps.linked}`}</p>
          {n.state !== 'done' && <button type="button" class="slim" onClick={() => onOpen(n)}>{words.pumps.carryOn}</button>}
        </li>))}
    </ul>
  );
}
