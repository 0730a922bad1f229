import { useEffect, useRef, useState } from 'preact/hooks';
import { post } from '../api/http';
import type { Errors } from '../check/build';
import type { LotRequest, ReagentView } from '../contract.reagent';
import { uuid7 } from '../format/uuid7';
import { fromField, toField } from '../format/zone';
import { serverNow } from '../live/clock';
import { zone } from '../live/store';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { words } from '../words';

const w = words.reagents;

/** A lot as it is printed, and when it was opened. */
export function LotForm({ reagent, onDone, onLeave }: { reagent: ReagentView; onDone: (text: string) => void; onLeave: () => void }) {
  const [id] = useState(uuid7);
  const [lot, setLot] = useState('');
  const [day, setDay] = useState('');
  const [opened, setOpened] = useState(() => toField(serverNow(), zone.value));
  const { busy, errors, run, setErrors } = useAction<ReagentView>(() => onDone(w.noted(lot.trim(), reagent.name)));
  const first = useRef<HTMLInputElement>(null);
  useEffect(() => first.current?.focus(), []);
  const submit = () => {
    const at = fromField(opened, zone.value);
    const wrong: Errors = {
      ...(lot.trim() ? {} : { lot: w.needLot }), ...(/^\d{4}-\d\d-\d\d$/.test(day) ? {} : { lastDay: w.needDay }), ...(at === null ? { openedAt: w.needOpened } : {}), ...(who.value.trim() ? {} : { by: words.needName }),
    };
    if (Object.keys(wrong).length) return setErrors(wrong);
    const body: LotRequest = { id, lot: lot.trim(), lastDay: day, openedAt: new Date(at!).toISOString(), by: who.value.trim() };
    void run(() => post(`/reagents/${encodeURIComponent(reagent.id)}/opened`, body));
  };
  return (
    <form class="action" noValidate onSubmit={e => { e.preventDefault(); submit(); }} data-testid={`lot-form-${reagent.id}`}>
      <Field name="lot" label={w.lot} error={errors['lot']}><input ref={first} type="text" autocomplete="off" value={lot} {...tie('lot', errors['lot'])} onInput={e => setLot(e.currentTarget.value)} /></Field>
      <Field name="lastDay" label={w.lastDay} hint={w.lastDayHint} error={errors['lastDay']}><input type="date" class="tall" value={day} {...tie('lastDay', errors['lastDay'])} onInput={e => setDay(e.currentTarget.value)} /></Field>
      <Field name="openedAt" label={w.openedAt} error={errors['openedAt']}><input type="datetime-local" class="tall" value={opened} {...tie('openedAt', errors['openedAt'])} onInput={e => setOpened(e.currentTarget.value)} /></Field>
      <NameField name="lot-by" error={errors['by']} />
      <OtherRemarks errors={errors} shown={['lot', 'lastDay', 'openedAt', 'by']} />
      <div class="inline"><button type="submit" class="primary" disabled={busy} data-testid="submit-lot">{w.save}</button><button type="button" onClick={onLeave}>{w.cancel}</button></div>
    </form>
  );
}
