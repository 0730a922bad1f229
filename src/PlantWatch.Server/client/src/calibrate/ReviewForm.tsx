import { useState } from 'preact/hooks';
import { post } from '../api/http';
import type { CalibrationView } from '../contract';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { link } from '../router';
import { words } from '../words';

const w = words.calibrate.review;

/** The second look at a signed calibration, by somebody else than who did it. */
export function ReviewForm({ calibration, onDone, away = false }: { calibration: CalibrationView; onDone: () => void; away?: boolean }) {
  const [why, setWhy] = useState('');
  const { busy, errors, run, setErrors } = useAction<CalibrationView>(onDone);
  const say = (accepted: boolean) => who.value.trim()
    ? void run(() => post(`/calibrations/${calibration.id}/review`, { accepted, by: who.value.trim(), why: why.trim() || null }))
    : setErrors({ by: words.needName });
  return (
    <form class="sheet card action no-print" noValidate onSubmit={e => { e.preventDefault(); say(true); }} data-testid="review">
      <h2>{w.title}</h2>
      <p>{w.lead(calibration.proposedBy)} {away && <a href={link('sheet', calibration.id)}>{words.calibrate.done.sheet}</a>}</p>
      <NameField name="review-by" error={errors['by']} />
      <Field name="review-why" label={w.why} error={errors['why']}><input type="text" value={why} {...tie('review-why', errors['why'])} onInput={e => setWhy(e.currentTarget.value)} /></Field>
      <OtherRemarks errors={errors} shown={['by', 'why']} />
      <div class="inline"><button type="submit" class="primary" disabled={busy} data-testid="accept">{w.accept}</button>
        <button type="button" disabled={busy} data-testid="object" onClick={() => say(false)}>{w.object}</button></div>
    </form>
  );
}
