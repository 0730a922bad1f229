import { useEffect, useState } from 'preact/hooks';
import { post } from '../api/http';
import type { Errors } from '../check/build';
import type { CircuitLimitsView, PackRowView } from '../contract.limits';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { words } from '../words';
import { documentInHand } from './document';

const w = words.limits;

const inHand = ['by', 'document'];
const inHandOf = (errors: Errors): Errors => Object.fromEntries(Object.entries(errors).filter(([field]) => inHand.includes(field)));

/** Confirms a row with what is in hand, says that it does not concern the plant, or takes back what was said. */
export function Answer({ circuit, row, onDone, onInHand }: { circuit: string; row: PackRowView; onDone: () => void; onInHand: (errors: Errors) => void }) {
  const [back, setBack] = useState(false);
  const [why, setWhy] = useState('');
  const { busy, errors, run, setErrors } = useAction<CircuitLimitsView>(() => { setBack(false); setWhy(''); onDone(); });
  const path = `/circuits/${encodeURIComponent(circuit)}/limits/${encodeURIComponent(row.id)}`;
  const by = who.value.trim(), document = documentInHand.value.trim();
  const confirm = (applies: boolean) => {
    const missing = { ...(by ? {} : { by: words.needName }), ...(document ? {} : { document: w.needDocument }) };
    if (Object.keys(missing).length > 0) onInHand(missing);
    else void run(() => post(path + '/confirm', { digest: row.digest, by, document, applies }));
  };
  const revoke = () => {
    const missing = { ...(by ? {} : { by: words.needName }), ...(why.trim() ? {} : { why: w.needWhy }) };
    if (Object.keys(missing).length > 0) setErrors(missing);
    else void run(() => post(path + '/revoke', { by, why: why.trim() }));
  };
  // What is wrong with the name or the document is told where they are typed, also when the server says it.
  useEffect(() => { if (errors['by'] || errors['document']) onInHand(inHandOf(errors)); }, [errors]);
  const name = `why-${row.id}`;
  if (!row.confirmed) return (
    <div class="action" role="group" aria-label={row.says}>
      <OtherRemarks errors={errors} shown={inHand} />
      <div class="inline">
        <button type="button" class="primary" disabled={busy} aria-label={`${w.confirm}: ${row.says}`} data-testid={`confirm-${row.id}`} onClick={() => confirm(true)}>{w.confirm}</button>
        {row.toJudge && <button type="button" disabled={busy} aria-label={`${w.notHere}: ${row.says}`} data-testid={`not-here-${row.id}`} onClick={() => confirm(false)}>{w.notHere}</button>}
      </div>
    </div>
  );
  if (!back) return <button type="button" class="quiet" aria-label={`${w.revoke}: ${row.says}`} data-testid={`back-${row.id}`} onClick={() => setBack(true)}>{w.revoke}</button>;
  return (
    <form class="action" noValidate onSubmit={e => { e.preventDefault(); revoke(); }}>
      <Field name={name} label={w.why} error={errors['why']}><input type="text" class="tall" value={why} {...tie(name, errors['why'])} onInput={e => setWhy(e.currentTarget.value)} /></Field>
      <OtherRemarks errors={errors} shown={['why', ...inHand]} />
      <div class="inline"><button type="submit" disabled={busy} data-testid={`revoke-${row.id}`}>{w.send}</button><button type="button" class="quiet" onClick={() => setBack(false)}>{w.cancel}</button></div>
    </form>
  );
}
