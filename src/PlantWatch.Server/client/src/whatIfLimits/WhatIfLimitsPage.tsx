import { useEffect, useState } from 'preact/hooks';
import type { WhatIfLimitsChoices, WhatIfLimitsRun } from '../contract.whatIfLimits';
import { usePolled } from '../parts/usePolled';
import { go, link } from '../router';
import { words } from '../words';
import { LimitForm } from './LimitForm';
import { RunView } from './RunView';

const w = words.whatIfLimits;
const often = 800;

function Run({ id }: { id: string }) {
  const path = `/what-if/limits/${encodeURIComponent(id)}`;
  const [ended, setEnded] = useState(false);
  const { data, failed, problem, reload } = usePolled<WhatIfLimitsRun>(path, ended ? undefined : often);
  useEffect(() => setEnded(data !== null && data.state !== 'waiting' && data.state !== 'running'), [data?.state]);
  if (data) return <RunView run={data} reload={reload} />;
  return <p class="hint" role="status">{failed ? (problem ? w.gone : words.error.unreachable) : words.loading}</p>;
}

/** Limits as they might be, tried on the history before anybody brings them into force. */
export function WhatIfLimitsPage({ id }: { id: string | null }) {
  const { data, failed } = usePolled<WhatIfLimitsChoices>('/what-if/limits');
  return (
    <div class="pages stack what-if-limits" data-testid="what-if-limits">
      <h1>{w.title}</h1>
      <p class="hint">{w.lead}</p>
      {data === null ? <p class="hint" role="status">{failed ? words.error.unreachable : w.loading}</p> : <LimitForm choices={data} onRun={run => go('what-if-limits', run.id)} />}
      {id && <Run key={id} id={id} />}
      {id && <p><a href={link('what-if-limits')}>{w.again}</a></p>}
    </div>
  );
}
