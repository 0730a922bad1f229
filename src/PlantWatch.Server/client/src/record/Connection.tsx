import type { BrokerTroubleView, BrokerView, SilentTopicView } from '../contract.topics';
import { fullClock } from '../format/zone';
import { zone } from '../live/store';
import { TickGlyph, WarnGlyph } from '../parts/Glyph';
import { usePolled } from '../parts/usePolled';
import { words } from '../words';

const w = words.connection;
const mostShown = 20;

// What stands now is said above already.
function Trouble({ trouble }: { trouble: BrokerTroubleView }) {
  return (
    <li data-testid={`trouble-${trouble.what}`}>
      <span class="hint">{trouble.now ? w.since(fullClock(trouble.since, zone.value)) : w.past(fullClock(trouble.since, zone.value))}</span>
      <span>{!trouble.now && <b>{trouble.text}</b>}<span class="block">{trouble.todo}</span></span>
      {trouble.topics.length > 0 && <span>{trouble.topics.slice(0, mostShown).map(t => <code key={t} class="block">{t}</code>)}{trouble.topics.length > mostShown && <span class="hint">{w.more(trouble.topics.length - mostShown)}</span>}</span>}
    </li>);
}

function Silent({ topics }: { topics: SilentTopicView[] }) {
  return (
    <div data-testid="silent-topics">
      <h3>{w.silent(topics.length)}</h3>
      <p class="hint">{w.silentTodo}</p>
      <ul class="history">{topics.slice(0, mostShown).map(t => (
        <li key={t.topic}><span><code>{t.topic}</code> <span class="hint">{t.of}</span></span><span class="hint">{w.since(fullClock(t.since, zone.value))}</span></li>))}</ul>
      {topics.length > mostShown && <p class="hint">{w.more(topics.length - mostShown)}</p>}
    </div>);
}

/** How the broker stands, what is wrong and what to do about it, and which topics have never spoken. */
export function Connection() {
  const { data, failed } = usePolled<BrokerView>('/broker', 5_000);
  return (
    <section class="sheet card" data-testid="connection">
      <h2>{w.title}</h2>
      {data === null ? <p class="hint" role="status">{failed ? words.error.unreachable : words.loading}</p> : <>
        <p class="mark" data-testid="broker-state">{data.well ? <TickGlyph /> : <WarnGlyph />}<b>{data.text}</b></p>
        {data.kind === 'external' && <p class="hint">{data.encrypted ? w.encrypted : w.plain}</p>}
        {data.troubles.length > 0 && <ul class="history">{data.troubles.map(t => <Trouble key={t.what} trouble={t} />)}</ul>}
        {data.silent.length > 0 && <Silent topics={data.silent} />}
      </>}
    </section>);
}
