import { fullClock } from '../format/zone';
import { nameOf, zone } from '../live/store';
import { checks, flushChecks, keptChecks, type CheckItem } from '../outbox/checks';
import { WarnGlyph } from '../parts/Glyph';
import { words } from '../words';

/** Checks on this device that the server has not taken: waiting, or refused with the reason. */
export function OutboxList({ except, onEdit }: { except: string | null; onEdit: (item: CheckItem) => void }) {
  const items = keptChecks.value.filter(i => i.id !== except);
  if (items.length === 0) return null;
  return (
    <section class="sheet outbox" data-testid="outbox">
      <h2>{words.outbox.title}</h2>
      <ul>
        {items.map(i => (
          <li key={i.id} data-testid={i.refusal ? 'outbox-refused' : 'outbox-waiting'}>
            <b>{nameOf(i.request.poolId)}</b>, {fullClock(i.request.sampledAt, zone.value)}, {i.request.who}
            {i.refusal
              ? <><p class="mark"><WarnGlyph /><span><b>{words.outbox.refused}:</b> {i.refusal.errors.map(e => e.text).join(' ') || i.refusal.title}</span></p>
                <div class="inline"><button type="button" onClick={() => onEdit(i)}>{words.outbox.edit}</button>
                  <button type="button" onClick={() => { if (confirm(words.outbox.dropSure)) checks.drop(i.id); }}>{words.outbox.drop}</button></div></>
              : <p class="hint">{words.outbox.waiting}</p>}
          </li>))}
      </ul>
      {items.some(i => !i.refusal) && <button type="button" onClick={() => void flushChecks()}>{words.outbox.sendNow}</button>}
    </section>
  );
}
