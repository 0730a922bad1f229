import type { PaperBlock, PaperCell, PaperSection, PaperTable as Table } from '../contract.paper';

function Cell({ cell, head, figures }: { cell: PaperCell; head: boolean; figures: boolean }) {
  const inner = <>{cell.was.map((w, i) => <del key={i}>{w}</del>)}{cell.outside ? <strong>{cell.text}</strong> : cell.text}{cell.note && <small>{cell.note}</small>}</>;
  return head ? <th scope="row">{inner}</th> : <td class={figures ? 'n' : ''}>{inner}</td>;
}

function PaperTable({ table }: { table: Table }) {
  // What scrolls can be reached by the keyboard, and says what it is.
  return (
    <div class="paper-scroll" tabIndex={0} role="region" aria-label={table.caption}>
      <table class="paper-table">
        <caption>{table.caption}</caption>
        <thead><tr>{table.columns.map((c, i) => <th key={i} scope="col" class={c.figures ? 'n' : ''}>{c.name}{c.unit && <span class="unit"> {c.unit}</span>}</th>)}</tr></thead>
        <tbody>{table.rows.map((row, r) => <tr key={r}>{row.map((cell, i) => <Cell key={i} cell={cell} head={i === 0} figures={table.columns[i]?.figures ?? false} />)}</tr>)}</tbody>
      </table>
    </div>
  );
}

function Block({ block }: { block: PaperBlock }) {
  if (block.table) return <PaperTable table={block.table} />;
  if (block.facts) return <dl class="paper-facts">{block.facts.map(f => <div key={f.name}><dt>{f.name}</dt><dd>{f.value}</dd></div>)}</dl>;
  return <p>{block.text}</p>;
}

/** A part of a sheet under its heading. */
export function PaperPart({ section }: { section: PaperSection }) {
  return (
    <section class="sheet card paper-part">
      {section.level === 1 ? <h2>{section.heading}</h2> : <h3>{section.heading}</h3>}
      {section.blocks.map((b, i) => <Block key={i} block={b} />)}
    </section>
  );
}
