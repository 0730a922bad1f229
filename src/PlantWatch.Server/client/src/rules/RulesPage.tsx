import { useEffect, useState } from 'preact/hooks';
import type { RuleView } from '../contract.alarms';
import { alarms } from '../live/store';
import { usePolled } from '../parts/usePolled';
import { words } from '../words';
import { OutList } from './OutList';
import { RuleSheet } from './RuleSheet';

const w = words.rulesPage;

const holds = (r: RuleView, text: string) => text.toLowerCase().split(/\s+/).every(word => `${r.number} ${r.title} ${r.sentence} ${words.priority[r.priority]}`.toLowerCase().includes(word));

/** Every rule in words, and what of them is out of service. An address may name one: it is come to and open. */
export function RulesPage({ number }: { number: string | null }) {
  const { data, failed, reload } = usePolled<RuleView[]>('/rules', 60_000);
  const [find, setFind] = useState('');
  const out = alarms.value.filter(a => a.state === 'out_of_service').map(a => a.id).join();
  useEffect(() => { if (data) reload(); }, [out]);
  useEffect(() => { if (data && number) document.getElementById(number)?.scrollIntoView(); }, [data !== null, number]);
  if (!data) return <p class="empty" role="status">{failed ? words.error.unreachable : words.loading}</p>;
  const shown = data.filter(r => holds(r, find.trim()));
  return (
    <div class="rules-page stack" data-testid="rules">
      <h1>{w.title}</h1>
      <p class="hint">{w.lead}</p>
      {failed && <p class="notice" role="status">{words.alarmPage.kept}</p>}
      <OutList rules={data} reload={reload} />
      <label class="label">{w.find} <input type="search" class="tall" value={find} data-testid="find-rule" onInput={e => setFind(e.currentTarget.value)} /></label>
      {shown.length === 0 ? <p class="hint" role="status">{w.none}</p> : <ol class="rules">{shown.map(r => <RuleSheet key={r.number} rule={r} named={r.number === number} reload={reload} />)}</ol>}
    </div>
  );
}
