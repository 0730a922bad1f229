import { useEffect, useRef } from 'preact/hooks';
import { ask } from '../api/http';
import type { WhatIfLimitsRun } from '../contract.whatIfLimits';
import { dayClock } from '../format/zone';
import { zone } from '../live/store';
import { OtherRemarks } from '../parts/Field';
import { useAction } from '../parts/useAction';
import { words } from '../words';
import { Answer } from './Answer';
import { Lines } from './Lines';

const w = words.whatIfLimits;

function UnderWay({ run, reload }: { run: WhatIfLimitsRun; reload: () => void }) {
  const { busy, errors, run: send } = useAction<WhatIfLimitsRun>(reload);
  const percent = Math.floor(100 * run.progress);
  return (
    <section class="sheet card" data-testid="under-way">
      <h2>{w.state[run.state]}</h2>
      {run.ahead > 0 ? <p class="hint">{w.ahead(run.ahead)}</p> : <p class="hint">{w.span(dayClock(run.from, zone.value), dayClock(run.to, zone.value))}</p>}
      <label class="run-progress"><span class="sr">{w.state[run.state]}</span><progress max={100} value={percent} /> <span class="n">{w.percent(String(percent))}</span></label>
      <OtherRemarks errors={errors} shown={[]} />
      <div class="inline"><button type="button" disabled={busy} data-testid="cancel" onClick={() => void send(() => ask('DELETE', `/what-if/limits/${run.id}`))}>{w.cancel}</button></div>
    </section>
  );
}

/** A run from waiting to its answer. */
export function RunView({ run, reload }: { run: WhatIfLimitsRun; reload: () => void }) {
  // The question stands above it: on a phone the run would begin out of sight.
  const top = useRef<HTMLDivElement>(null);
  useEffect(() => top.current?.scrollIntoView({ block: 'start' }), []);
  return <div class="stack run-view" ref={top}>
    <p class="sr" role="status" aria-live="polite">{w.state[run.state]}</p>
    {run.state === 'waiting' || run.state === 'running' ? <UnderWay run={run} reload={reload} />
      : run.result ? <Answer run={run} result={run.result} />
      : <section class="sheet card"><h2>{w.state[run.state]}</h2>{run.fault && <p class="notice bad" role="alert">{run.fault.text}</p>}</section>}
    <Lines lines={run.lines} />
  </div>;
}
