import type { LedgerView, RefusalView } from '../contract';
import { grouped } from '../format/number';
import { fullClock } from '../format/zone';
import { circuits, health, site, zone } from '../live/store';
import { TickGlyph, WarnGlyph } from '../parts/Glyph';
import { StateHistory } from '../pool/StateHistory';
import { usePolled } from '../parts/usePolled';
import { words } from '../words';
import { Connection } from './Connection';
import { Entries } from './Entries';
import { closes } from './sums';
import { Storage } from './Storage';

const w = () => words.record;

function Sum({ name, value, sign }: { name: 'received' | 'stored' | 'duplicates' | 'refused' | 'in-flight'; value: number; sign: string }) {
  const key = name === 'in-flight' ? 'inFlight' : name;
  return <div class="sum"><span class="sign" aria-hidden="true">{sign}</span><span class="figure" data-testid={`sum-${name}`} data-value={value}>{grouped(value)}</span><span class="label">{w().sums[key]}</span></div>;
}

function Sums({ ledger }: { ledger: LedgerView }) {
  const good = closes(ledger);
  return (
    <>
      <div class="sums">
        <Sum name="received" value={ledger.received} sign="" /><Sum name="stored" value={ledger.stored} sign="=" /><Sum name="duplicates" value={ledger.duplicates} sign="+" />
        <Sum name="refused" value={ledger.refused} sign="+" /><Sum name="in-flight" value={ledger.inFlight} sign="+" />
      </div>
      <p class="mark" data-testid="sum-closes" data-closes={good}>{good ? <TickGlyph /> : <WarnGlyph />}<b>{good ? w().closes : w().open}</b></p>
      <p class="hint">{w().identity(grouped(ledger.storedByDeviceTime), grouped(ledger.storedByPacket), grouped(ledger.storedAtLeastOnce))} {w().messages(grouped(ledger.messages))}</p>
    </>
  );
}

function Circuits() {
  const views = [...circuits.value.values()];
  if (views.length === 0) return null;
  return (
    <div class="scroll" tabIndex={0} role="region" aria-label={w().circuit}><table class="wide-table">
      <thead><tr><th scope="col">{w().circuit}</th>{(['received', 'stored', 'duplicates', 'refused', 'inFlight'] as const).map(k => <th key={k} scope="col" class="n">{w().sums[k]}</th>)}</tr></thead>
      <tbody>{views.map(c => (
        <tr key={c.id}><th scope="row">{site.value?.circuits.find(x => x.id === c.id)?.name ?? (c.id === 'unclaimed' ? w().unclaimed : c.id)}</th>
          {(['received', 'stored', 'duplicates', 'refused', 'inFlight'] as const).map(k => <td key={k} class="n">{grouped(c.ledger[k])}</td>)}</tr>))}</tbody>
    </table></div>
  );
}

function Refusals() {
  const { data, failed } = usePolled<RefusalView[]>('/refusals', 15_000);
  return (
    <section class="sheet card" data-testid="refusals">
      <h2>{w().refusals}</h2>
      {data === null ? <p class="hint">{failed ? words.error.unreachable : words.loading}</p> : data.length === 0 ? <p class="hint">{w().noRefusals}</p> : (
        <ul class="history refusals">{data.map(r => (
          <li key={r.id} data-testid={`refusal-${r.reason}`}><span class="hint">{fullClock(r.receivedAt, zone.value)}</span>
            <span><b>{r.text}</b><span class="hint block">{r.topic} {'\u00b7'} {r.circuit}</span></span>
            <span><code>{r.payloadText || w().noText}</code> <span class="hint">{w().bytes(grouped(r.payloadBytes))}</span></span></li>))}</ul>)}
    </section>
  );
}

export function RecordPage() {
  const h = health.value;
  const polled = usePolled<{ ledger: LedgerView; broker: string }>(h ? null : '/health-view');
  const ledger = h?.ledger ?? polled.data?.ledger;
  return (
    <div class="pages stack">
      <h1>{w().title}</h1>
      <section class="sheet card"><h2>{w().sumsTitle}</h2>
        <p class="hint">{w().explain}</p>
        {ledger ? <Sums ledger={ledger} /> : <p class="hint">{words.overview.waiting}</p>}
        <Circuits />
      </section>
      <Connection />
      <Entries />
      <section class="sheet card" data-testid="record-states"><h2>{words.poolState.historyTitle}</h2><StateHistory /></section>
      <Refusals />
      <Storage />
    </div>
  );
}
