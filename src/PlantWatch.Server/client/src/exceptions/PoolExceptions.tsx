import type { ExceptionsView } from '../contract.exceptions';
import { usePolled } from '../parts/usePolled';
import { link } from '../router';
import { query } from '../api/http';
import { words } from '../words';
import { ExceptionRow } from './ExceptionRow';

const w = words.exceptions;

/** What stands open of a pool, on its page; nothing while nothing does. */
export function PoolExceptions({ poolId }: { poolId: string }) {
  const { data, reload } = usePolled<ExceptionsView>('/exceptions' + query({ pool: poolId, size: 1 }), 15_000);
  if (!data || data.open.length === 0) return null;
  return (
    <section class="sheet card" data-testid="pool-exceptions"><h2>{w.ofPool}</h2>
      <ul class="exception-list">{data.open.map(l => <ExceptionRow key={l.id} line={l} onDone={reload} />)}</ul>
      <a href={link('exceptions', poolId)}>{w.toAll}</a></section>
  );
}
