import type { PastHandover } from '../contract.handover';
import { fullClock } from '../format/zone';
import { zone } from '../live/store';
import { TickGlyph, WarnGlyph } from '../parts/Glyph';
import { words } from '../words';
import { Lines } from './Lines';

const w = words.handover;

function One({ past: p, waits }: { past: PastHandover; waits: boolean }) {
  const { said } = p, signed = said.signedAt !== null;
  return (
    <li data-testid="past-handover" data-signed={signed}>
      <span class="mark">{signed ? <TickGlyph /> : <WarnGlyph />}<span><b>{said.from ?? w.noNote}</b>{said.writtenAt && `, ${fullClock(said.writtenAt, zone.value)}`}; {signed ? w.signedBy(said.to ?? '', fullClock(said.signedAt!, zone.value)) : waits ? w.waiting : w.unsigned}</span></span>
      {said.note && <span class="pre">{said.note}</span>}{said.remark && <span class="pre hint">{said.to}: {said.remark}</span>}
      {!p.intact && <span class="notice bad">{w.altered}</span>}
      {p.lines.length > 0 && <details><summary>{w.lines(p.lines.length)}</summary><Lines lines={p.lines} /></details>}
    </li>
  );
}

/** Handovers of before, the unsigned ones among them. */
export function Past({ past, waiting }: { past: PastHandover[]; waiting: string | null }) {
  return (
    <section class="sheet card no-print" data-testid="handover-past"><h2>{w.past}</h2>
      {past.length === 0 ? <p class="hint">{w.noPast}</p> : <ul class="handover-list">{past.map(p => <One key={p.said.id} past={p} waits={p.said.id === waiting} />)}</ul>}</section>
  );
}
