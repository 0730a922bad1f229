import { useState } from 'preact/hooks';
import { now } from '../live/clock';
import { words } from '../words';
import { Happened } from './Happened';
import { Standing } from './Standing';

const w = words.handover;
const spans = [8, 12, 24, 72];

/** What one shift hands to the next: what stands, what is put away, what is not finished, what is due, what happened. */
export function HandoverPage() {
  const [hours, setHours] = useState(12);
  // To the hour, so that the question stays the same while the page is open.
  const from = new Date(Math.floor(now.peek() / 3_600_000) * 3_600_000 - hours * 3_600_000).toISOString();
  return (
    <div class="pages two-columns handover">
      <section class="stack">
        <div class="pump-head"><h1>{w.title}</h1><button type="button" class="no-print" onClick={() => print()}>{w.print}</button></div>
        <p>{w.lead}</p>
        <Standing />
      </section>
      <section class="stack">
        <div class="sheet card">
          <div class="pump-head"><h2>{w.happened}</h2>
            <label class="no-print">{w.span} <select value={String(hours)} data-testid="handover-hours" onChange={e => setHours(Number(e.currentTarget.value))}>{spans.map(h => <option key={h} value={h}>{w.hours(h)}</option>)}</select></label></div>
          <p class="hint">{w.last(hours)}</p>
          <Happened from={from} />
        </div>
        <p class="sign">{w.sign}</p>
      </section>
    </div>
  );
}
