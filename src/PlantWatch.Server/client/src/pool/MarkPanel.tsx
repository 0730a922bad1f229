import { useLayoutEffect, useRef } from 'preact/hooks';
import type { MarkView } from '../contract.notes';
import { fullClock } from '../format/zone';
import { zone } from '../live/store';
import { link } from '../router';
import { words } from '../words';
import { MarkSign } from './MarkSign';

const w = words.stripTools.marks;

/** Where more is said of it; null where this is all. */
function pageOf(m: MarkView, poolId: string): string | null {
  switch (m.kind) {
    case 'dose': return link('dose', poolId);
    case 'calibration': case 'probe': return link('probe', m.subject);
    case 'alarm': return link('alarm', m.id);
    case 'wash': return link('pumps');
    case 'stock': return link('chemicals');
    case 'job': return link('jobs', m.subject);
    case 'laboratory': return link('laboratory');
    case 'pool': case 'plan': case 'gap': return link('record');
    default: return null;
  }
}

/** What one mark, or a gathering of them, is about: what, who, when, and where it goes on. */
export function MarkPanel({ marks, poolId, close }: { marks: MarkView[]; poolId: string; close: () => void }) {
  const host = useRef<HTMLElement>(null);
  const about = marks.map(m => m.id).join();
  // Once for what was opened: the strips are drawn anew with every second and every letter of a note.
  useLayoutEffect(() => { host.current?.focus(); }, [about]);
  return (
    <section class="mark-panel" ref={host} tabIndex={-1} aria-label={w.label} data-testid="mark-panel" onKeyDown={e => { if (e.key === 'Escape') { e.stopPropagation(); close(); } }}>
      <ul>{marks.map(m => (
        <li key={m.id} data-testid={`opened-${m.kind}`}><MarkSign kind={m.kind} />
          <div><b>{w.kinds[m.kind]}</b>, {m.subjectName} <span class="hint">{fullClock(m.at, zone.value)}{m.until ? `, ${w.until(fullClock(m.until, zone.value))}` : ''}, {m.by ? w.by(m.by) : w.itself}</span>
            <p class="pre">{m.text}</p>{pageOf(m, poolId) && <a class="line-link" href={pageOf(m, poolId)!}>{w.open[m.kind]}</a>}</div></li>))}</ul>
      <button type="button" class="slim" onClick={close} data-testid="close-mark">{w.close}</button>
    </section>
  );
}
