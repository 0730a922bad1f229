import { useState } from 'preact/hooks';
import type { BenchView } from '../contract.bench';
import { fixed } from '../format/number';
import { serverNow } from '../live/clock';
import { Field, tie } from '../parts/Field';
import { MendLine } from '../parts/MendLine';
import { focusFirstWrong } from '../parts/mending';
import { usePolled } from '../parts/usePolled';
import { words } from '../words';
import type { Bottle, PointDraft } from './draft';
import { SettleView } from './SettleView';
import { knownOf, SolutionPick, tableOf } from './SolutionPick';
import { isNoPh, missingOf, numberOf } from './sheet';

const w = words.calibrate;

/** One solution: which, how warm, put it in, wait until it has settled or type what is read. Works without readings and without a server. */
export function PointForm({ bench, point, bottle, name, onChange, onBottle, onNext, onLeave }: {
  bench: BenchView; point: PointDraft; bottle: Bottle; name: string; onChange: (change: Partial<PointDraft>) => void; onBottle: (change: Partial<Bottle>) => void; onNext: () => void; onLeave: (() => void) | null;
}) {
  const [tried, setTried] = useState(false);
  const { probe } = bench, ph = probe.measurand === 'ph';
  const waiting = point.since !== null && point.settled === null;
  const live = usePolled<BenchView>(waiting ? `/bench/${encodeURIComponent(probe.id)}?since=${encodeURIComponent(new Date(point.since!).toISOString())}` : null, 2000);
  const missing = missingOf(point);
  const errors: Record<string, string> = {};
  if (tried) for (const [field, what] of Object.entries(missing)) errors[field] = what === 'wrong' ? w.need.wrong : w.need[field as 'celsius' | 'label' | 'reading'];
  // Said here, with the bottle in hand, and not only when the sheet is worked out.
  const outside = { ...(!point.labelled && tableOf(bench, point).length > 0 && numberOf(point.celsius) !== null && knownOf(bench, point) === null ? { celsius: w.outOfTable } : {}), ...(ph && isNoPh(point) ? { reading: words.check.phRange } : {}) };
  if (tried) Object.assign(errors, outside);
  const next = () => { if (Object.keys(missing).length === 0 && Object.keys(outside).length === 0) return onNext(); setTried(true); focusFirstWrong(); };
  const settled = live.data?.settled ?? null;
  return (
    <>
      <SolutionPick bench={bench} point={point} bottle={bottle} errors={errors} name={name} onChange={onChange} onBottle={onBottle} />
      {point.settled !== null ? (
        <div class="settle is-settled" data-testid="taken"><div class="settle-top"><span class="figure">{w.taken(fixed(point.settled, ph ? 2 : 0))}</span><button type="button" onClick={() => onChange({ settled: null, since: serverNow(), at: null })}>{w.retake}</button></div></div>
      ) : (
        <>
          {point.since === null && <button type="button" class="primary" data-testid="put-in" onClick={() => onChange({ since: serverNow() })}>{w.putIn}</button>}
          {waiting && live.failed && <p class="notice" role="status" data-testid="no-server">{w.noServer}</p>}
          {waiting && !live.failed && settled && settled.readings > 0 && <SettleView settled={settled} decimals={ph ? 2 : 0} unit={ph ? '' : 'mV'} onTake={value => onChange({ settled: value, at: serverNow(), typed: '' })} />}
          {waiting && !live.failed && settled && settled.readings === 0 && <p class="hint" role="status" data-testid="no-readings">{w.noReadings}</p>}
          <Field name="reading" label={`${w.typed} (${w.orType})`} error={errors['reading']} hint={ph && point.millivolts ? w.mvHint : undefined}>
            <div class="inline"><input type="text" inputMode="decimal" class="big" value={point.typed} {...tie('reading', errors['reading'])} onInput={e => onChange({ typed: e.currentTarget.value, at: serverNow() })} />
              {ph ? <select value={point.millivolts ? 'mv' : 'ph'} aria-label={w.typed} data-testid="reading-unit" onChange={e => onChange({ millivolts: e.currentTarget.value === 'mv' })}><option value="ph">{w.inPh}</option><option value="mv">{w.inMv}</option></select> : <span class="unit">mV</span>}</div>
          </Field>
        </>)}
      <MendLine errors={errors} />
      <div class="submit-bar"><button type="button" class={Object.keys(missing).length === 0 ? 'primary' : ''} data-testid="next" onClick={next}>{w.next}</button>
        {onLeave && <button type="button" class="quiet-button" data-testid="leave-out" onClick={onLeave}>{w.leave}</button>}</div>
      {onLeave && <p class="hint">{w.leaveHint}</p>}
    </>
  );
}
