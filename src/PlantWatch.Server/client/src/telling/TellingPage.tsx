import { useState } from 'preact/hooks';
import type { TellingView } from '../contract.telling';
import { dayClock } from '../format/zone';
import { zone } from '../live/store';
import { NameField } from '../parts/NameField';
import { usePolled } from '../parts/usePolled';
import { words } from '../words';
import { ChannelCard } from './ChannelCard';

const w = words.telling;
const listed = (names: string[]) => names.length ? names.join(', ') : w.nobody;

function Duty({ view }: { view: TellingView }) {
  return (
    <section class="sheet card" data-testid="duty">
      <h2>{w.duty}</h2>
      <dl class="tell-facts">
        <div><dt>{w.now}</dt><dd>{listed(view.onCall)}{view.standsIn && <span class="hint block">{w.standsIn}</span>}</dd></div>
        {view.nextAt && <div><dt>{w.next}, {w.from(dayClock(view.nextAt, zone.value))}</dt><dd>{listed(view.next)}</dd></div>}
        {view.escalation.length > 0 && <div><dt>{w.escalation}</dt><dd><ol class="tell-order">{view.escalation.map(name => <li key={name}>{name}</li>)}</ol></dd></div>}
        {view.quietFrom && view.quietTo && <div><dt>{w.quiet}</dt><dd>{w.quietSaid(view.quietFrom, view.quietTo)}</dd></div>}
      </dl>
    </section>
  );
}

/** By which ways people are told of alarms, whether each works, and who is told now. */
export function TellingPage() {
  const { data, failed, reload } = usePolled<TellingView>('/telling', 5000);
  const [name, setName] = useState<string | undefined>();
  return (
    <div class="pages stack">
      <h1>{w.title}</h1>
      {data === null ? <p class="hint" role="status">{failed ? words.error.unreachable : words.loading}</p>
        : data.channels.length === 0 ? <p data-testid="nobody-told">{w.none}</p> : <>
          <Duty view={data} />
          <section class="sheet card">
            <h2>{w.channels}</h2>
            <NameField name="telling-by" label={w.by} error={name} />
            <ul class="tell-channels">{data.channels.map(c => <ChannelCard key={c.id} channel={c} reload={reload} onName={setName} />)}</ul>
          </section>
        </>}
    </div>
  );
}
