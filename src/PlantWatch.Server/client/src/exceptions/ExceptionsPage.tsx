import { useState } from 'preact/hooks';
import { query } from '../api/http';
import type { ExceptionsView } from '../contract.exceptions';
import { allPools } from '../live/store';
import { usePolled } from '../parts/usePolled';
import { go } from '../router';
import { words } from '../words';
import { ExceptionRow } from './ExceptionRow';

const w = words.exceptions;

function Filters({ pool, month, onMonth }: { pool: string | null; month: string; onMonth: (month: string) => void }) {
  return (
    <div class="inline no-print exception-filters">
      <label class="label">{w.pool} <select value={pool ?? ''} data-testid="exceptions-pool" onChange={e => (e.currentTarget.value ? go('exceptions', e.currentTarget.value) : go('exceptions'))}>
        <option value="">{w.all}</option>{[...allPools.value.values()].map(p => <option key={p.id} value={p.id}>{p.name}</option>)}</select></label>
      <label class="label">{w.month} <input type="month" class="tall" value={month} data-testid="exceptions-month" onChange={e => onMonth(e.currentTarget.value)} /></label>
      {month && <button type="button" class="quiet-button" onClick={() => onMonth('')}>{w.anyMonth}</button>}
      <a class="button quiet" href={'/api/v1/exceptions.csv' + query({ pool, month: month || null })} download data-testid="exceptions-table">{w.table}</a>
    </div>
  );
}

function Pager({ view, onPage }: { view: ExceptionsView; onPage: (page: number) => void }) {
  if (view.pages < 2) return null;
  return (
    <div class="inline no-print">
      <button type="button" disabled={view.page <= 1} onClick={() => onPage(view.page - 1)}>{w.newer}</button>
      <span class="hint">{w.pageOf(view.page, view.pages)}</span>
      <button type="button" disabled={view.page >= view.pages} onClick={() => onPage(view.page + 1)}>{w.older}</button>
    </div>
  );
}

export function ExceptionsPage({ pool }: { pool: string | null }) {
  const [month, setMonth] = useState('');
  const [page, setPage] = useState(1);
  const { data, failed, problem, reload } = usePolled<ExceptionsView>('/exceptions' + query({ pool, month: month || null, page: page === 1 ? null : page }), 15_000);
  return (
    <div class="pages stack exceptions-page" data-testid="exceptions">
      <h1>{w.title}</h1>
      <p>{w.lead}</p>
      <Filters pool={pool} month={month} onMonth={m => { setMonth(m); setPage(1); }} />
      {data === null ? <p class="hint" role="status">{problem?.errors[0]?.text ?? (failed ? words.error.unreachable : words.loading)}</p> : <>
        {failed && <p class="hint" role="status">{words.error.unreachable}</p>}
        <section data-testid="exceptions-open"><h2>{w.open}</h2>
          {data.open.length === 0 ? <p class="hint">{w.noneOpen}</p> : <ul class="exception-list">{data.open.map(l => <ExceptionRow key={l.id} line={l} onDone={reload} />)}</ul>}</section>
        <section data-testid="exceptions-closed"><h2>{w.closed}</h2>
          {data.closed.length === 0 ? <p class="hint">{w.noneClosed}</p> : <><p class="hint">{w.counted(data.count)}</p><ul class="exception-list">{data.closed.map(l => <ExceptionRow key={l.id} line={l} onDone={reload} />)}</ul></>}
          <Pager view={data} onPage={setPage} /></section>
      </>}
    </div>
  );
}
