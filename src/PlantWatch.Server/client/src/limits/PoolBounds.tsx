import type { CircuitInfo } from '../contract';
import type { BoundView, PackRowView, PoolBoundsView } from '../contract.limits';
import { words } from '../words';
import { rangeText, unitWord } from './rows';

const w = words.limits;

/** Where the ends of a bound come from: rows of the pack, the plant's own, or one of each. */
function From({ bound, rows, onRow }: { bound: BoundView; rows: PackRowView[]; onRow: (row: string) => void }) {
  const ends = [...new Set([bound.low != null ? [bound.lowFrom] : [], bound.high != null ? [bound.highFrom] : []].flat())];
  return <>{ends.map(id => {
    const row = rows.find(r => r.id === id);
    return <span class="hint" key={id}>{row ? <button type="button" class="link-button" aria-label={`${w.showRow}: ${row.says}`} onClick={() => onRow(id)}>{row.says}</button> : w.own}</span>;
  })}</>;
}

/** What is watched in a pool now, and what cannot be decided. */
export function PoolBounds({ circuit, pool, rows, onRow }: { circuit: CircuitInfo; pool: PoolBoundsView; rows: PackRowView[]; onRow: (row: string) => void }) {
  const name = circuit.pools.find(p => p.id === pool.pool)?.name ?? pool.pool;
  return (
    <section class="bounds" data-testid={`bounds-${pool.pool}`}>
      <h3>{name}: {pool.word === 'unconfirmed' ? w.poolWaits(pool.unconfirmed.length) : w.words[pool.word]}</h3>
      {pool.bounds.length === 0 ? <p class="hint">{w.noBounds}</p> : (
        <ul>{pool.bounds.map((b, i) => (
          <li key={i}><span class="bound-name">{b.name}{b.grade === 'closure' && `, ${w.grades.closure}`}</span> <b class="num">{rangeText(b)} {unitWord(b.unit)}</b>
            <From bound={b} rows={rows} onRow={onRow} /></li>))}</ul>)}
      {pool.undecided.length > 0 && <div class="notice"><b>{w.undecided}</b>
        <ul>{pool.undecided.map(u => <li key={u.row}>{rows.find(r => r.id === u.row)?.says ?? u.row}: {u.needs}</li>)}</ul></div>}
    </section>
  );
}
