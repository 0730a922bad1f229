import { useState } from 'preact/hooks';
import type { ReagentView } from '../contract.reagent';
import { fixed } from '../format/number';
import { fullClock } from '../format/zone';
import { zone } from '../live/store';
import { list } from '../overview/DueLine';
import { Age } from '../parts/Age';
import { PoolGlyph, WarnGlyph } from '../parts/Glyph';
import { usePolled } from '../parts/usePolled';
import { words } from '../words';
import { LotForm } from './LotForm';

const w = words.reagents;

function Line({ reagent: r, onSaid }: { reagent: ReagentView; onSaid: (text: string) => void }) {
  const [noting, note] = useState(false);
  const facts = [list(r.tests), w.uses[r.method], r.daysAfterOpening === null ? '' : w.life(fixed(r.daysAfterOpening, 0))].filter(Boolean).join('; ');
  return (
    <li class="pump" data-testid={`reagent-${r.id}`} data-word={r.word}>
      <div class="pump-head"><b>{r.name}</b><span class="mark">{r.word === 'out_of_date' ? <WarnGlyph /> : r.word === 'order' ? <PoolGlyph state="due" /> : null}<b>{w.words[r.word]}</b></span></div>
      <p class="hint">{facts}</p>
      {r.lot !== null && <p>{w.lotSaid(r.lot)}, {w.opened} <Age at={r.openedAt} />, {r.notedBy && w.by(r.notedBy)}; {w.until(fullClock(r.goodUntil!, zone.value))}</p>}
      {r.why && <p class="notice">{r.why.text}</p>}
      {noting ? <LotForm reagent={r} onLeave={() => note(false)} onDone={text => { note(false); onSaid(text); }} />
        : <button type="button" class="slim" data-testid={`note-lot-${r.id}`} onClick={() => note(true)}>{w.open}</button>}
    </li>
  );
}

/** What the plant tests with, how long it is good, and the noting of a lot that is opened. */
export function ReagentsPage() {
  const { data, failed, reload } = usePolled<ReagentView[]>('/reagents', 60_000);
  const [said, say] = useState('');
  return (
    <div class="pages stack">
      <h1>{w.title}</h1>
      <section class="sheet card">
        <p class="hint">{w.hint}</p>
        <p role="status" class={said ? 'notice' : 'sr'} data-testid="reagents-said">{said}</p>
        {data === null ? <p class="hint">{failed ? words.error.unreachable : words.loading}</p> : data.length === 0 ? <p class="hint">{w.none}</p>
          : <ul class="pump-list">{data.map(r => <Line key={r.id} reagent={r} onSaid={text => { say(text); reload(); }} />)}</ul>}
      </section>
    </div>
  );
}
