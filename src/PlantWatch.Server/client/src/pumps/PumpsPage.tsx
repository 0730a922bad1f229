import { useEffect, useState } from 'preact/hooks';
import type { JobView } from '../contract.jobs';
import type { Beginning } from '../jobs/draft';
import { JobForm } from '../jobs/JobForm';
import { JobList } from '../jobs/JobList';
import { allPumps, circuits } from '../live/store';
import { usePolled } from '../parts/usePolled';
import { go, link } from '../router';
import { words } from '../words';
import { FiltersCard } from './FiltersCard';
import { PumpCard } from './PumpCard';

/** Pumps beside the jobs that are not over; the address may name the thing to write about. */
export function PumpsPage({ asset }: { asset: string | null }) {
  const [open, setOpen] = useState<Beginning | null>(asset ? { job: null, asset } : null);
  useEffect(() => { if (asset) setOpen({ job: null, asset }); }, [asset]);
  const { data, failed, reload } = usePolled<JobView[]>('/jobs', 60_000);
  const live = [...circuits.value.values()].flatMap(c => c.jobs).map(j => j.id + j.at + j.effect).join();
  useEffect(() => { if (data) reload(); }, [live]);
  const close = () => { setOpen(null); if (asset) go('pumps'); reload(); };
  const pumps = [...allPumps.value.values()];
  return (
    <div class="pages two-columns">
      <section class="stack">
        <h1>{words.pumps.title}</h1>
        <div class="sheet card"><div class="pump-head"><h2>{words.poolPage.pumps}</h2><a class="button" href={link('chemicals')}>{words.pageNames.pages.chemicals}</a></div>
          {pumps.length === 0 ? <p class="hint">{words.poolPage.noPumps}</p> : <ul class="pump-list">{pumps.map(p => <PumpCard key={p.id} pump={p} />)}</ul>}</div>
        <FiltersCard />
      </section>
      <section class="stack">
        {open !== null && <JobForm key={open.job?.id ?? 'new-' + open.asset} begin={open} onDone={close} />}
        <div class="sheet card"><div class="pump-head"><h2>{words.pumps.notes}</h2>{open === null && <button type="button" data-testid="new-job" onClick={() => setOpen({ job: null, asset: null })}>{words.pumps.newNote}</button>}</div>
          {data === null ? <p class="hint">{failed ? words.error.unreachable : words.loading}</p> : <JobList jobs={data.slice(0, 20)} onOpen={job => setOpen({ job, asset: null })} />}</div>
      </section>
    </div>
  );
}
