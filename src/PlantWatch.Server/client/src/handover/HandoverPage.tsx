import { useState } from 'preact/hooks';
import type { HandoverView } from '../contract.handover';
import { dayClock } from '../format/zone';
import { now } from '../live/clock';
import { zone } from '../live/store';
import { usePolled } from '../parts/usePolled';
import { words } from '../words';
import { Happened } from './Happened';
import { Past } from './Past';
import { NoteForm, SignForm } from './SignForms';
import { Since } from './Since';
import { Standing } from './Standing';

const w = words.handover;
const spans = [8, 12, 24, 72];
const hour = 3_600_000;

/** What one shift hands to the next: what is new since the last signature, what stands, what is not finished, what is due, what happened; written and signed by name. */
export function HandoverPage() {
  const { data: view, failed, reload } = usePolled<HandoverView>('/handover', 30_000);
  const [hours, setHours] = useState<number | null>(null);
  const [said, say] = useState('');
  const last = view?.last?.signedAt ?? null;
  const back = hours ?? (last ? null : 12);
  // To the hour, so that the question stays the same while the page is open.
  const from = back === null ? last! : new Date(Math.floor(now.peek() / hour) * hour - back * hour).toISOString();
  const done = (text: string) => { say(text); setHours(null); reload(); };
  return (
    <div class="pages two-columns handover">
      <section class="stack">
        <div class="pump-head"><h1>{w.title}</h1><button type="button" class="no-print" onClick={() => print()}>{w.print}</button></div>
        <p>{w.lead}</p>
        <p role="status" class={said ? 'notice' : 'sr'} data-testid="handover-said">{said}</p>
        {view ? <Since view={view} /> : <p class="hint">{failed ? words.error.unreachable : words.loading}</p>}
        <Standing />
      </section>
      <section class="stack">
        <div class="sheet card">
          <div class="pump-head"><h2>{w.happened}</h2>
            <label class="no-print">{w.span} <select value={String(back ?? '')} data-testid="handover-hours" onChange={e => setHours(Number(e.currentTarget.value) || null)}>{last && <option value="">{dayClock(last, zone.value)}</option>}{spans.map(h => <option key={h} value={h}>{w.hours(h)}</option>)}</select></label></div>
          {back !== null && <p class="hint">{w.last(back)}</p>}
          <Happened from={from} />
        </div>
        {view && <>{view.waiting && <SignForm key="sign" view={view} onDone={done} onStale={reload} />}<NoteForm key="note" view={view} onDone={done} />{!view.waiting && <SignForm key="sign" view={view} onDone={done} onStale={reload} />}<Past past={view.past} waiting={view.waiting?.id ?? null} /></>}
        <p class="sign print-only">{w.sign}</p>
      </section>
    </div>
  );
}
