import type { StockBookView } from '../contract.stock';
import { words } from '../words';
import { amountOf, money } from './lasting';

const w = words.chemicals;

/** What each month used and cost, newest first; the running one is not over. */
export function Months({ book }: { book: StockBookView }) {
  return (
    <section class="sheet card" data-testid="months">
      <h2>{w.months}</h2>
      {book.months.length === 0 ? <p class="hint">{w.noMonths}</p> : book.months.map(m => (
        <table key={m.month} class="lines"><caption class="month-head">{m.month.slice(0, 7)}{book.today.startsWith(m.month.slice(0, 7)) && `, ${w.soFar}`}</caption>
          <thead><tr><th scope="col">{w.product}</th><td>{w.amount}</td><td>{w.costColumn}</td></tr></thead>
          <tbody>{m.products.map(p => <tr key={p.productId + p.unit}><th scope="row">{p.name}</th><td class="n">{amountOf(p.amount, p.unit)}</td><td>{money(p.cost)}</td></tr>)}
            <tr><th scope="row"><b>{w.total}</b></th><td /><td><b>{money(m.cost)}</b></td></tr></tbody></table>))}
    </section>
  );
}
