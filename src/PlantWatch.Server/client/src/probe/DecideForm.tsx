import { useState } from 'preact/hooks';
import { post } from '../api/http';
import type { CalibrationStatus, CalibrationView, ProbeInfo } from '../contract';
import { fullClock, fromField, toField } from '../format/zone';
import { serverNow } from '../live/clock';
import { zone } from '../live/store';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { link } from '../router';
import { words } from '../words';
import { correction } from './OfferCard';

/** The engineer's word on a proposal: in force from a time, or turned down with a reason. A panel adjustment is marked when it was carried out. */
export function DecideForm({ probe, proposal, onDone }: { probe: ProbeInfo; proposal: CalibrationView; onDone: () => void }) {
  const [why, setWhy] = useState('');
  const [from, setFrom] = useState('');
  const { busy, errors, run, setErrors } = useAction<CalibrationView>(onDone);
  const panel = proposal.kind === 'panel_adjustment';
  // A sheet of the bench says itself from when on it holds: since the probe stood in its cell again.
  const bench = proposal.sheet != null;
  const decide = (decision: CalibrationStatus) => {
    const at = from === '' ? serverNow() : fromField(from, zone.value);
    const missing = {
      ...(who.value.trim() ? {} : { by: words.needName }), ...(why.trim() || decision === 'adjusted' ? {} : { why: words.alarms.needWhy }), ...(at === null ? { holdsFrom: words.check.needTime } : {}),
    };
    if (Object.keys(missing).length || at === null) return setErrors(missing);
    void run(() => post(`/calibrations/${proposal.id}/decision`, { decision, by: who.value.trim(), why: why.trim() || null, holdsFrom: bench ? null : new Date(at).toISOString() }));
  };
  return (
    <form class="sheet card action" noValidate onSubmit={e => { e.preventDefault(); decide(panel ? 'adjusted' : 'approved'); }} data-testid="decide">
      <h2>{words.probe.waiting}</h2>
      <p><b>{words.calibrationKind[proposal.kind]}:</b> {correction(proposal, probe)}</p>
      <p class="hint">{words.probe.proposedBy(proposal.proposedBy, fullClock(proposal.proposedAt, zone.value))}{proposal.note && `: ${proposal.note}`}</p>
      <NameField name="decide-by" error={errors['by']} label={words.probe.engineer} />
      <Field name="decide-why" label={words.alarms.why} error={errors['why']}><input type="text" value={why} {...tie('decide-why', errors['why'])} onInput={e => setWhy(e.currentTarget.value)} /></Field>
      {bench ? <p><a href={link('sheet', proposal.id)}>{words.calibrate.done.sheet}</a></p> : (
        <Field name="holds-from" label={panel ? words.probe.doneAt : words.probe.holdsFrom} error={errors['holdsFrom']}>
          <div class="inline"><input type="datetime-local" value={from || toField(serverNow(), zone.value)} {...tie('holds-from', errors['holdsFrom'])} onInput={e => setFrom(e.currentTarget.value)} />
            <button type="button" onClick={() => setFrom('')}>{words.check.now}</button></div>
        </Field>)}
      <OtherRemarks errors={errors} shown={['by', 'why', 'holdsFrom']} />
      <div class="inline">
        <button type="submit" class="primary" disabled={busy} data-testid={panel ? 'mark-adjusted' : 'approve'}>{panel ? words.probe.markDone : words.probe.approve}</button>
        <button type="button" disabled={busy} data-testid="reject" onClick={() => decide('rejected')}>{words.probe.reject}</button>
      </div>
    </form>
  );
}
