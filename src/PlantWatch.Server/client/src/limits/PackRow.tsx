import type { Errors } from '../check/build';
import type { CircuitInfo } from '../contract';
import type { PackRowView } from '../contract.limits';
import { fullClock } from '../format/zone';
import { zone } from '../live/store';
import { words } from '../words';
import { Answer } from './Answer';
import { anchorOf, figureOf, isLimit, unitWord } from './rows';

const w = words.limits;

function Standing({ row }: { row: PackRowView }) {
  const said = row.confirmed;
  if (!said) return <p class={row.changedSince ? 'notice' : 'hint'} data-testid={`waits-${row.id}`}>{row.changedSince ? w.changed : w.waits}</p>;
  return <p class="confirmed" data-testid={`confirmed-${row.id}`}><span aria-hidden="true">{'\u2713'} </span>{(said.applies ? w.confirmedBy : w.judgedAway)(said.by, fullClock(said.at, zone.value))}<span class="hint"> {said.document}</span></p>;
}

/** One row as the document has to be read against it. */
export function PackRow({ circuit, row, onDone, onInHand }: { circuit: CircuitInfo; row: PackRowView; onDone: () => void; onInHand: (errors: Errors) => void }) {
  const nameOf = (id: string) => circuit.pools.find(p => p.id === id)?.name ?? id;
  const figure = figureOf(row);
  return (
    <li class={`sheet card pack-row ${row.confirmed ? 'done' : ''}`} id={anchorOf(circuit.id, row.id)} tabIndex={-1} data-testid={`row-${row.id}`}>
      <div class="pack-head"><h3>{row.name}</h3><span class="hint">{w.grades[row.grade]}</span></div>
      {figure && <p class="pack-figure num">{figure} <span class="unit">{unitWord(row.unit)}</span></p>}
      <p>{row.says}</p>
      {row.toJudge && <p class="notice"><b>{w.toJudge}:</b> {row.toJudge}</p>}
      {!isLimit(row) && row.quantity === 'sentence' && <p class="hint">{w.readOnly}</p>}
      <dl class="pack-facts">
        <dt>{w.pools}</dt><dd>{row.pools.map(p => `${nameOf(p.pool)}: ${p.holds !== 'no' && !p.measured ? words.inText(w.notMeasured) : w.holds[p.holds]}`).join('; ')}</dd>
        <dt>{w.source}</dt><dd>{row.source}</dd>
      </dl>
      <p class={row.provenance === 'published' ? 'hint' : ''}>{row.provenance === 'published' ? w.provenance.published : <b>{w.provenance[row.provenance]}</b>}{row.certainty && <span class="hint"> ({row.certainty})</span>}</p>
      <Standing row={row} />
      <Answer circuit={circuit.id} row={row} onDone={onDone} onInHand={onInHand} />
    </li>
  );
}
