import { locale } from '../format/language';
import type { StockDayView, StockView } from '../contract.stock';
import { words } from '../words';
import { amountOf, money } from './lasting';

const w = words.chemicals;
const box = { width: 320, height: 64 };

const short = (day: string) => new Date(day).toLocaleDateString(locale, { day: 'numeric', month: 'short', timeZone: 'UTC' });

function Bar({ day, x, wide, high }: { day: StockDayView; x: number; wide: number; high: number }) {
  const height = high > 0 ? Math.max(0, day.amount) / high * box.height : 0;
  return <rect class={day.whole ? 'use-bar' : 'use-bar in-part'} x={x} y={box.height - height} width={wide} height={height} />;
}

/** Use by day as bars, and the same as a table for whoever cannot see them. Days known in part are outlined. */
export function UsePlot({ product }: { product: StockView }) {
  const days = product.days;
  if (days.length === 0) return <p class="hint">{w.noUse}</p>;
  const first = Date.parse(days[0]!.day), last = Date.parse(days[days.length - 1]!.day);
  const count = Math.round((last - first) / 86_400_000) + 1, step = box.width / Math.max(count, 7), high = Math.max(...days.map(d => d.amount));
  return (
    <figure class="use-plot">
      <figcaption class="hint">{w.use}: {words.plan.atMost(amountOf(high, product.unit))}</figcaption>
      <svg viewBox={`0 0 ${box.width} ${box.height}`} preserveAspectRatio="none" role="img" aria-label={w.plot(product.name)}>
        <line class="use-base" x1="0" x2={box.width} y1={box.height} y2={box.height} />
        {days.map(d => <Bar key={d.day} day={d} x={(Date.parse(d.day) - first) / 86_400_000 * step} wide={step * 0.8} high={high} />)}
      </svg>
      <p class="use-ends hint"><span>{short(days[0]!.day)}</span><span>{short(days[days.length - 1]!.day)}</span></p>
      <details><summary>{w.plotTable}</summary>
        <table class="lines"><thead><tr><th scope="col">{w.day}</th><td>{w.amount}</td><td>{w.costColumn}</td></tr></thead>
          <tbody>{[...days].reverse().map(d => <tr key={d.day}><th scope="row">{d.day}{!d.whole && <span class="hint"> {w.part}</span>}</th><td class="n">{amountOf(d.amount, product.unit)}</td><td>{money(d.cost)}</td></tr>)}</tbody></table></details>
    </figure>
  );
}
