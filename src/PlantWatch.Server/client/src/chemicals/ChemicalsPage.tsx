import { useState } from 'preact/hooks';
import type { BathersView, StockAct, StockBookView, StockMoveView, StockView } from '../contract.stock';
import { WarnGlyph } from '../parts/Glyph';
import { usePolled } from '../parts/usePolled';
import { words } from '../words';
import { BathersForm } from './BathersForm';
import { Months } from './Months';
import { MoveForm } from './MoveForm';
import { MoveList } from './MoveList';
import { ProductCard } from './ProductCard';

const w = words.chemicals;
const acts = ['delivered', 'refilled', 'counted', 'bathers'] as const;
type Open = (typeof acts)[number];

const dayBefore = (day: string) => new Date(Date.parse(day) - 86_400_000).toISOString().slice(0, 10);

function Bathers({ counts }: { counts: BathersView[] | null }) {
  return (
    <section class="sheet card" data-testid="bathers"><h2>{w.bathersList}</h2>
      {counts === null ? <p class="hint">{words.loading}</p> : counts.length === 0 ? <p class="hint">{w.bathersNone}</p>
        : <table class="lines"><thead><tr><th scope="col">{w.day}</th><td>{w.pool}</td><td>{w.number}</td></tr></thead><tbody>{counts.map(c => <tr key={c.id}><th scope="row">{c.day}</th><td>{c.pool}</td><td class="n">{c.number}</td></tr>)}</tbody></table>}
    </section>
  );
}

/** Nothing is known of it: no tank, never counted, never used. */
const isBare = (p: StockView) => p.tanks.length === 0 && p.store === null && p.use.days === 0;

function Products({ products }: { products: StockView[] }) {
  const bare = products.filter(isBare);
  return (
    <>
      {products.filter(p => !isBare(p)).map(p => <ProductCard key={p.id} product={p} />)}
      {bare.length > 0 && (
        <section class="sheet card" data-testid="chemicals-bare"><h2>{w.bare}</h2><p class="hint">{w.bareHint}</p>
          <ul class="chemical-places">{bare.map(p => <li key={p.id} class="pump-head"><span>{p.name}</span><span class="hint">{p.storePlace ?? ''}</span></li>)}</ul></section>)}
    </>
  );
}

/** Chemicals: what there is and for how long, what is written down of them, what they cost. */
export function ChemicalsPage() {
  const book = usePolled<StockBookView>('/stock', 60_000), moves = usePolled<StockMoveView[]>('/stock/moves', 60_000), bathers = usePolled<BathersView[]>('/bathers?days=7', 300_000);
  const [open, setOpen] = useState<Open | null>(null), [said, say] = useState('');
  const done = (text: string) => { say(text); setOpen(null); book.reload(); moves.reload(); bathers.reload(); };
  if (book.data === null) return <div class="pages"><h1>{w.title}</h1><p class="hint">{book.failed ? words.error.unreachable : words.loading}</p></div>;
  const leave = () => setOpen(null);
  return (
    <div class="pages two-columns">
      <section class="stack">
        <h1>{w.title}</h1>
        <p role="status" class={said ? 'notice' : 'sr'} data-testid="chemicals-said">{said}</p>
        {open === null ? <div class="sheet card"><h2>{w.write}</h2><div class="choices">{acts.map(a => <button key={a} type="button" class="choice" data-testid={`open-${a}`} onClick={() => { say(''); setOpen(a); }}>{w.open[a]}</button>)}</div></div>
          : open === 'bathers' ? <BathersForm yesterday={dayBefore(book.data.today)} onDone={done} onLeave={leave} /> : <MoveForm key={open} act={open as StockAct} book={book.data} onDone={done} onLeave={leave} />}
        {book.data.tooClose.length > 0 && <div class="notice"><b class="mark"><WarnGlyph />{w.tooClose}</b><ul class="plain">{book.data.tooClose.map(t => <li key={t.text}>{t.text}</li>)}</ul></div>}
        {book.data.products.length === 0 ? <p class="hint">{w.none}</p> : <Products products={book.data.products} />}
      </section>
      <section class="stack">
        <div class="sheet card"><h2>{w.moves}</h2>{moves.data === null ? <p class="hint">{moves.failed ? words.error.unreachable : words.loading}</p> : <MoveList rows={moves.data} />}</div>
        <Months book={book.data} />
        <Bathers counts={bathers.data} />
      </section>
    </div>
  );
}
