import type { StockMoveView } from '../contract.stock';
import { fixed } from '../format/number';
import { fullClock } from '../format/zone';
import { zone } from '../live/store';
import { PriorityGlyph, WarnGlyph } from '../parts/Glyph';
import { words } from '../words';
import { amountOf, money } from './lasting';

const w = words.chemicals;

function Row({ row: { move: m, place, corrected, advice, wrong } }: { row: StockMoveView }) {
  const counted = m.act === 'counted';
  const where = counted ? (place ? w.inTank(place) : w.inStoreCount) : place ? w.into(place) : w.intoStore;
  const facts = [
    m.containers !== null ? w.containersSaid(m.containers) : '', m.strength !== null ? `${fixed(m.strength, 1)} %` : '', m.batch ? w.batch(m.batch) : '', m.price !== null ? money(m.price) : '', m.book !== null && counted ? w.book(amountOf(m.book, m.unit)) : '',
  ].filter(Boolean).join(', ');
  return (
    <li data-testid={`move-${m.act}`} class={corrected ? 'gone-row' : ''}>
      <span class="hint">{fullClock(m.happenedAt, zone.value)}</span>
      <span><b>{w.acts[m.act]} {amountOf(m.amount, m.unit)}</b> {m.product}, {where}{facts && ` (${facts})`}; {w.two(m.by, m.checkedBy)}</span>
      {wrong && <span class="mark"><PriorityGlyph priority="critical" /><b>{wrong.text}</b></span>}
      {advice.map(a => <span key={a.code} class="mark"><WarnGlyph /><span>{a.text}</span></span>)}
      {corrected && <span class="hint">{w.corrected}</span>}
      {m.correctionReason && <span class="hint">{w.correction(m.correctionReason)}</span>}
      {m.note && <span class="hint">{m.note}</span>}
    </li>
  );
}

/** The rows of the stock book, newest first. */
export function MoveList({ rows }: { rows: StockMoveView[] }) {
  return rows.length === 0 ? <p class="hint">{w.noMoves}</p> : <ul class="history" data-testid="moves">{rows.map(r => <Row key={r.move.id} row={r} />)}</ul>;
}
