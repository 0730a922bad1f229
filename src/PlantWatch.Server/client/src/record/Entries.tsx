import { useState } from 'preact/hooks';
import { query } from '../api/http';
import type { EntriesView, EntryView, RecordGroup } from '../contract.record';
import { fullClock } from '../format/zone';
import { now } from '../live/clock';
import { zone } from '../live/store';
import { usePolled } from '../parts/usePolled';
import { words } from '../words';

const w = words.entries;
const spans = [1, 7, 31, 366];

export function Row({ entry: e }: { entry: EntryView }) {
  // What was typed in later than it happened says both.
  const late = Date.parse(e.at) - Date.parse(e.happenedAt) >= 60_000;
  return (
    <li data-testid={`entry-${e.about}`}><span class="hint">{fullClock(e.happenedAt, zone.value)}</span><span class="label">{w.groups[e.about]}</span>
      <span><b>{e.subjectName}</b>: <span class="pre">{e.text}</span> <span class="hint">({e.by ?? w.plant}{late && `, ${w.later(fullClock(e.at, zone.value))}`})</span></span></li>
  );
}

function List({ days, about }: { days: number; about: RecordGroup }) {
  // To the hour, so that the question stays the same while the page is open.
  const from = new Date(Math.floor(now.peek() / 3_600_000) * 3_600_000 - days * 86_400_000).toISOString();
  const { data, failed } = usePolled<EntriesView>('/entries' + query({ from, about }), 30_000);
  if (data === null) return <p class="hint" role="status">{failed ? words.error.unreachable : words.loading}</p>;
  return (
    <>
      {failed && <p class="notice" role="status">{words.error.unreachable}</p>}
      {data.more && <p class="notice">{w.more}</p>}
      {data.entries.length === 0 ? <p class="hint" data-testid="no-entries">{w.none}</p> : <ul class="history entries" data-testid="entries">{data.entries.map(e => <Row key={e.id} entry={e} />)}</ul>}
    </>
  );
}

/** Everything that people and the plant wrote down, newest first: of one kind, or of all. */
export function Entries() {
  const [days, setDays] = useState(7), [about, setAbout] = useState<RecordGroup>('all');
  return (
    <section class="sheet card"><h2>{w.title}</h2>
      <div class="inline">
        <label>{w.about} <select value={about} data-testid="entries-about" onChange={e => setAbout(e.currentTarget.value as RecordGroup)}>{(Object.keys(w.groups) as RecordGroup[]).map(g => <option key={g} value={g}>{w.groups[g]}</option>)}</select></label>
        <label>{w.span} <select value={String(days)} data-testid="entries-span" onChange={e => setDays(Number(e.currentTarget.value))}>{spans.map(d => <option key={d} value={d}>{w.days(d)}</option>)}</select></label>
      </div>
      <List days={days} about={about} />
    </section>
  );
}
