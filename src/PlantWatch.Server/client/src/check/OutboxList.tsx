import { fullClock } from '../format/zone';
import { nameOf, zone } from '../live/store';
import { checks, flushChecks, keptChecks } from '../outbox/checks';
import { WarnGlyph } from '../parts/Glyph';
import { words } from '../words';
import { refusalOf } from './fields';
import { mend } from './mend';

/** Checks on this device that the server has not taken: waiting, or refused with the reason. */
export function OutboxList({ except }: { except: string | null }) {
  const items = keptChecks.value.filter(i => i.id !== except);
  if (items.length === 0) return null;
  return (
    <section class="sheet outbox" data-testid="outbox">
      <h2>{words.outbox.title}</h2>
      <ul>
        {items.map(i => (
          <li key={i.id} data-testid={i.refusal ? 'outbox-refused' : 'outbox-waiting'}>
            <p><b>{nameOf(i.request.poolId)}</b>, {fullClock(i.request.sampledAt, zone.value)}, {i.request.who}</p>
            {i.refusal
              ? <><p class="mark"><WarnGlyph /><span><b>{words.outbox.refused}:</b> {refusalOf(i.request, i.refusal)}</span></p>
                <div class="inline"><button type="button" onClick={() => mend(i)}>{words.outbox.edit}</button>
                  <button type="button" onClick={() => { if (confirm(words.outbox.dropSure)) checks.drop(i.id); }}>{words.outbox.drop}</button></div></>
              : <p class="hint">{words.outbox.waiting}</p>}
          </li>))}
      </ul>
      {items.some(i => !i.refusal) && <button type="button" onClick={() => void flushChecks()}>{words.outbox.sendNow}</button>}
    </section>
  );
}
