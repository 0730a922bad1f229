import type { CircuitInfo } from '../contract';
import type { BoundView, PackRowView, PoolBoundsView, TurnedRow } from '../contract.limits';
import { words } from '../words';
import { rangeText, trim, unitWord } from './rows';

const w = words.limits;

/** Where the ends of a bound come from: rows of the pack, the plant's own, or one of each. */
function From({ bound, rows, onRow }: { bound: BoundView; rows: PackRowView[]; onRow: (row: string) => void }) {
  const ends = [...new Set([bound.low != null ? [bound.lowFrom] : [], bound.high != null ? [bound.highFrom] : []].flat())];
  return <>{ends.map(id => {
    const row = rows.find(r => r.id === id);
    return <span class="hint" key={id}>{row ? <button type="button" class="link-button" aria-label={`${w.showRow}: ${row.says}`} onClick={() => onRow(id)}>{row.says}</button> : w.own}</span>;
  })}</>;
}

/** How a row in mV was turned to the pool's own electrode. */
function turnedText(row: TurnedRow): string {
  const how = !row.against ? w.turnedUnnamed(trim(row.spread)) : row.spread > 0 ? w.turnedOpen(row.against, trim(row.spread)) : w.turnedFrom(row.against);
  return `${w.turned(`${rangeText(row)} mV`, row.own)} ${how}`;
}

/** What is watched in a pool now, and what cannot be decided. */
export function PoolBounds({ circuit, pool, rows, onRow }: { circuit: CircuitInfo; pool: PoolBoundsView; rows: PackRowView[]; onRow: (row: string) => void }) {
  const name = circuit.pools.find(p => p.id === pool.pool)?.name ?? pool.pool;
  const says = (row: string) => rows.find(r => r.id === row)?.says ?? row;
  return (
    <section class="bounds" data-testid={`bounds-${pool.pool}`}>
      <h3>{name}: {pool.word === 'unconfirmed' ? w.poolWaits(pool.unconfirmed.length) : w.words[pool.word]}</h3>
      {pool.bounds.length === 0 ? <p class="hint">{w.noBounds}</p> : (
        <ul>{pool.bounds.map((b, i) => (
          <li key={i}><span class="bound-name">{b.name}{b.grade === 'closure' && `, ${w.grades.closure}`}</span> <b class="num">{b.quantity === 'clarity' ? w.bottomSeen : `${rangeText(b)} ${unitWord(b.unit)}`}</b>
            <From bound={b} rows={rows} onRow={onRow} />
            {b.byBalance && <span class="hint">{w.byBalance}</span>}{b.quantity === 'clarity' && <span class="hint">{w.byStop}</span>}</li>))}</ul>)}
      {pool.undecided.length > 0 && <div class="notice"><b>{w.undecided}</b>
        <ul>{pool.undecided.map(u => <li key={u.row}>{says(u.row)}: {u.needs}</li>)}</ul></div>}
      {pool.turned.map(t => <p class="hint" key={t.rowId} data-testid={`turned-${t.rowId}`}>{says(t.rowId)}. {turnedText(t)}</p>)}
      {pool.notMeasured.length > 0 && <div class="hint" data-testid={`not-measured-${pool.pool}`}><b>{w.notMeasured}.</b> {w.notMeasuredMeans}
        <ul>{pool.notMeasured.map(r => <li key={r}>{says(r)}</li>)}</ul></div>}
    </section>
  );
}
