import { roomLeft } from '../outbox/outbox';
import { browser } from '../outbox/make';
import { words } from '../words';
import { reach } from './worker';

const w = words.offline;

/** What this device can do without signal, and what it lacks. */
export function OfflineHelp() {
  const full = !roomLeft(browser);
  return (
    <>
      {full && <p class="notice bad" role="alert" data-testid="no-room">{w.full}</p>}
      <details class="sheet card offline-help" data-testid="offline-help" data-reach={reach.value}>
        <summary>{w.title}</summary>
        <p><b>{w.reach[reach.value]}</b></p>
        {w.can.map(line => <p key={line}>{line}</p>)}
      </details>
    </>
  );
}
