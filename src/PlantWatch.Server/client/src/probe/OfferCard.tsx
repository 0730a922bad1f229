import { useState } from 'preact/hooks';
import { put } from '../api/http';
import type { CalibrationView, OfferedCalibration, ProbeInfo } from '../contract';
import { fixed, signed, unitText } from '../format/number';
import { uuid7 } from '../format/uuid7';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { words } from '../words';

/** A sum is written with a space after its sign. */
const spaced = (text: string) => (/^\d/.test(text) ? '+ ' + text : `${text[0]} ${text.slice(1)}`);

/** A calibration in words: corrected = slope x raw + offset, or what to do on the panel. */
export function correction(c: Pick<OfferedCalibration, 'kind' | 'slope' | 'offset'>, probe: ProbeInfo): string {
  const d = Math.max(probe.decimals, 1), amount = `${spaced(signed(c.offset, d))} ${unitText(probe.unit) || words.measurand[probe.measurand]}`;
  if (c.kind === 'panel_adjustment') return words.probe.adjustPanel(amount);
  return c.kind === 'offset' ? words.probe.shift(amount) : words.probe.slope(fixed(c.slope, 3), amount);
}

/** What PlantWatch would propose from the checks, for a person to take up or leave. */
export function OfferCard({ probe, offer, onDone }: { probe: ProbeInfo; offer: OfferedCalibration; onDone: () => void }) {
  const [id] = useState(uuid7);
  const [note, setNote] = useState('');
  const { busy, errors, run, setErrors } = useAction<CalibrationView>(onDone);
  const submit = () => who.value.trim()
    ? void run(() => put('/calibrations/' + id, { probeId: probe.id, kind: offer.kind, slope: offer.slope, offset: offer.offset, checks: offer.checks, by: who.value.trim(), note: note.trim() || null }))
    : setErrors({ by: words.needName });
  return (
    <form class="sheet card action offer" noValidate onSubmit={e => { e.preventDefault(); submit(); }} data-testid="offer" data-kind={offer.kind}>
      <h2>{words.probe.offer}</h2>
      <p><b>{words.calibrationKind[offer.kind]}:</b> {correction(offer, probe)}</p>
      <ul class="plain">{offer.why.map((s, i) => <li key={i}>{s.text}</li>)}</ul>
      <p class="hint">{words.probe.restsOn(offer.checks.length)} {offer.kind === 'panel_adjustment' ? words.probe.panelHint : words.probe.rawHint}</p>
      <NameField name="propose-by" error={errors['by']} />
      <Field name="propose-note" label={words.check.note} error={errors['note']}><input type="text" value={note} {...tie('propose-note', errors['note'])} onInput={e => setNote(e.currentTarget.value)} /></Field>
      <OtherRemarks errors={errors} shown={['by', 'note']} />
      <button type="submit" class="primary" disabled={busy} data-testid="propose">{words.probe.propose}</button>
    </form>
  );
}
