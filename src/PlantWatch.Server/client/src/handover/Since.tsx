import type { HandoverView } from '../contract.handover';
import { dayClock } from '../format/zone';
import { zone } from '../live/store';
import { WarnGlyph } from '../parts/Glyph';
import { words } from '../words';
import { Lines } from './Lines';

const w = words.handover;

/** What is written for who comes in, and what is otherwise than when the last one signed. */
export function Since({ view }: { view: HandoverView }) {
  const { waiting, last } = view;
  const moved = [...view.lines.filter(l => l.move === 'new'), ...view.lines.filter(l => l.move === 'changed'), ...view.gone];
  return (
    <>
      {waiting && (
        <section class="notice" data-testid="handover-waiting"><p class="mark"><WarnGlyph /><b>{w.waits(waiting.from ?? '')}</b></p>
          <p class="pre">{waiting.note}</p>{waiting.writtenAt && <p class="hint">{w.wrote(dayClock(waiting.writtenAt, zone.value))}</p>}</section>)}
      <section class="sheet card" data-testid="handover-since">
        <h2>{last?.signedAt ? w.since(last.from, last.to ?? '', dayClock(last.signedAt, zone.value)) : w.neverSigned}</h2>
        {!last ? <p class="hint">{w.firstLead}</p> : moved.length === 0 ? <p>{w.nothingMoved}</p> : <Lines lines={moved} />}
      </section>
    </>
  );
}
