import { useEffect, useState } from 'preact/hooks';
import type { FaultNote } from '../contract';
import { allPumps, circuits } from '../live/store';
import { usePolled } from '../parts/usePolled';
import { go } from '../router';
import { words } from '../words';
import { FaultForm } from './FaultForm';
import { FaultList } from './FaultList';
import { FiltersCard } from './FiltersCard';
import { PumpCard } from './PumpCard';

/** Pumps beside the notes of maintenance; the address may name the thing to write about. */
export function PumpsPage({ asset }: { asset: string | null }) {
  const [open, setOpen] = useState<FaultNote | 'new' | null>(asset ? 'new' : null);
  useEffect(() => { if (asset) setOpen('new'); }, [asset]);
  const { data, failed, reload } = usePolled<FaultNote[]>('/faults', 60_000);
  const live = [...circuits.value.values()].flatMap(c => c.faults);
  const key = live.map(f => f.id + f.at).join();
  useEffect(() => { if (data) reload(); }, [key]);
  const close = () => { setOpen(null); if (asset) go('pumps'); reload(); };
  const pumps = [...allPumps.value.values()];
  return (
    <div class="pages two-columns">
      <section class="stack">
        <h1>{words.pumps.title}</h1>
        <div class="sheet card"><h2>{words.poolPage.pumps}</h2>
          {pumps.length === 0 ? <p class="hint">{words.poolPage.noPumps}</p> : <ul class="pump-list">{pumps.map(p => <PumpCard key={p.id} pump={p} />)}</ul>}</div>
        <FiltersCard />
      </section>
      <section class="stack">
        {open !== null && <FaultForm key={open === 'new' ? 'new-' + asset : open.id} asset={asset} note={open === 'new' ? null : open} onDone={close} />}
        <div class="sheet card"><div class="pump-head"><h2>{words.pumps.notes}</h2>{open === null && <button type="button" data-testid="new-fault" onClick={() => setOpen('new')}>{words.pumps.newNote}</button>}</div>
          {data === null && live.length === 0 ? <p class="hint">{failed ? words.error.unreachable : words.loading}</p> : <FaultList notes={[...(data ?? []), ...live]} onOpen={setOpen} />}</div>
      </section>
    </div>
  );
}
