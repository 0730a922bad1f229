import type { AuthorityTable, HoldRow } from '../contract.incident';
import { grouped } from '../format/number';
import { words } from '../words';
import { cyanurateOf, holdTime, phOf, plain } from './incident';

const w = words.incident.row;

/** One row of an authority's table, with who says so and how far it can be relied on. */
export function HoldRowSaid({ row }: { row: HoldRow }) {
  return (
    <li class={`hold-row ${row.superseded ? 'older' : ''}`}>
      {row.basis === 'dilute_first' ? <b>{w.dilute(plain(row.cyanurate[0], 0))}</b> : row.basis === 'none' ? <b>{w.none}</b> : <>
        {row.basis === 'contact_time' && <b>{w.contact(grouped(row.required))}</b>}
        {levels(row).map((l, i) => row.basis === 'minutes' && i === 0 ? <b class="block" key={l}>{l}</b> : <span class="block" key={l}>{l}</span>)}
        <span class="block">{cyanurateOf(row.cyanurate)}; {w.water(phOf(row), plain(row.lowestCelsius))}; {w.start(plain(row.startAt))}</span></>}
      {row.remarks.map(r => <span class="block" key={r.code}>{r.text}</span>)}
      <span class="under block">{row.source}. <span class={row.provenance.code === 'from_memory' ? 'from-memory' : ''}>{row.provenance.text}</span>{row.superseded && `; ${w.notCounted}`}</span>
    </li>
  );
}

// What is recalled says so at the level itself where the row does not.
function levels(row: HoldRow): string[] {
  return row.levels.map(l => w.hold(plain(l.milligramsPerLitre, 1), holdTime(l.minutes)) + (l.provenance.code === row.provenance.code ? '' : ` (${l.provenance.code === 'from_memory' ? 'from memory' : l.provenance.text})`));
}

/** What one authority asks for, apart from the others. */
export function AuthorityRows({ table }: { table: AuthorityTable }) {
  return (
    <section class="authority">
      <h3>{table.name}</h3>
      <ul class="hold-rows">{table.rows.map((row, i) => <HoldRowSaid key={i} row={row} />)}</ul>
    </section>
  );
}
