import type { TaskView } from '../contract.jobs';
import { fixed } from '../format/number';
import { dayClock } from '../format/zone';
import { zone } from '../live/store';
import { Age } from '../parts/Age';
import { WarnGlyph } from '../parts/Glyph';
import { words } from '../words';

const w = words.jobs;

/** Work that comes round, what is due first. */
export function PlannedWork({ tasks, onWrite }: { tasks: TaskView[]; onWrite: (task: TaskView) => void }) {
  if (tasks.length === 0) return <p class="hint">{w.noPlanned}</p>;
  return (
    <ul class="fault-list">
      {tasks.map(t => (
        <li key={t.circuit + t.id} class="fault" data-testid={`task-${t.id}`} data-overdue={t.overdue}>
          <div class="pump-head"><b>{t.name}</b>{t.overdue && <span class="mark"><WarnGlyph /><b>{w.overdue}</b></span>}</div>
          <p class="hint">{t.assetName}, {w.every(fixed(t.everyDays, 0))}; {w.due} {dayClock(t.dueAt, zone.value)}; {t.doneAt ? <>{w.last} <Age at={t.doneAt} /></> : w.neverDone}</p>
          <button type="button" class="slim" data-testid={`write-task-${t.id}`} onClick={() => onWrite(t)}>{w.writeDown}</button>
        </li>))}
    </ul>
  );
}
