import { useState } from 'preact/hooks';
import { put } from '../api/http';
import type { IncidentKind, IncidentView, KindOfIncident } from '../contract.incident';
import { uuid7 } from '../format/uuid7';
import { fromField, toField } from '../format/zone';
import { serverNow } from '../live/clock';
import { zone } from '../live/store';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { words } from '../words';
import { HoldRowSaid } from './HoldTable';

const w = words.incident;

/** Declaring: what happened, whose figures, who. What happened is never guessed; whose figures is proposed where the pool's limit pack has a plan for it. */
export function DeclareForm({ poolId, kinds, onDone }: { poolId: string; kinds: KindOfIncident[]; onDone: (view: IncidentView) => void }) {
  const [id] = useState(uuid7);
  const [kind, setKind] = useState<IncidentKind | null>(null);
  const [authority, setAuthority] = useState<string | null>(null);
  const [when, setWhen] = useState<string | null>(null);
  const [note, setNote] = useState('');
  const { busy, errors, run, setErrors } = useAction<IncidentView>(onDone);
  const chosen = kinds.find(k => k.kind === kind);
  const submit = () => {
    const at = when === null ? null : fromField(when, zone.value);
    const missing = {
      ...(kind ? {} : { kind: w.needKind }), ...(authority ? {} : { authority: w.needAuthority }), ...(who.value.trim() ? {} : { by: words.needName }),
      ...(when !== null && at === null ? { happenedAt: w.needWhen } : {}),
    };
    if (Object.keys(missing).length) return setErrors(missing);
    void run(() => put('/incidents/' + id, { poolId, kind, authority, by: who.value.trim(), note: note.trim() || null, happenedAt: at === null ? null : new Date(at).toISOString() }));
  };
  return (
    <form class="sheet card action declare" noValidate onSubmit={e => { e.preventDefault(); submit(); }} data-testid="declare-form">
      <p class="declare-lead">{w.lead}</p>
      <Field name="kind" label={w.what} error={errors['kind']} group>
        <div class="kinds">{kinds.map(k => (
          <label key={k.kind} class="choice"><input type="radio" name={'kind-' + id} checked={kind === k.kind} data-testid={`kind-${k.kind}`} onChange={() => { setKind(k.kind); setAuthority(k.proposed); }} />{w.kinds[k.kind]}</label>))}</div>
      </Field>
      {chosen && (
        <Field name="authority" label={w.authority} error={errors['authority']} hint={w.authorityHint} group>
          {chosen.proposedWhy && <p class="hint" data-testid="proposed-why">{chosen.proposedWhy.text}</p>}
          <div class="authorities">{chosen.authorities.filter(a => a.inUse).map(a => (
            <label key={a.authority} class="choice authority-choice"><input type="radio" name={'authority-' + id} checked={authority === a.authority} data-testid={`authority-${a.authority}`} onChange={() => setAuthority(a.authority)} />
              <span><b>{a.name}</b><ul class="hold-rows">{a.rows.filter(r => !r.superseded).map((row, i) => <HoldRowSaid key={i} row={row} />)}</ul></span></label>))}</div>
        </Field>)}
      <Field name="happenedAt" label={w.when} error={errors['happenedAt']} hint={w.whenHint} group>
        <div class="choices"><label class="choice"><input type="radio" name={'when-' + id} checked={when === null} onChange={() => setWhen(null)} />{w.justNow}</label>
          <label class="choice"><input type="radio" name={'when-' + id} checked={when !== null} data-testid="when-earlier" onChange={() => setWhen(toField(serverNow(), zone.value))} />{w.earlier}</label></div>
        {when !== null && <input type="datetime-local" class="tall" aria-label={w.when} value={when} {...tie('happened', errors['happenedAt'])} onInput={e => setWhen(e.currentTarget.value)} />}
      </Field>
      <Field name="note" label={w.note} error={errors['note']}><textarea rows={2} value={note} {...tie('note', errors['note'])} onInput={e => setNote(e.currentTarget.value)} /></Field>
      <NameField name="incident-by" error={errors['by']} />
      <OtherRemarks errors={errors} shown={['kind', 'authority', 'happenedAt', 'note', 'by']} />
      <button type="submit" class="primary" disabled={busy} data-testid="submit-incident">{kind === 'deck_spill' ? w.declareDeck : w.declare}</button>
      <p class="hint">{w.advice}</p>
    </form>
  );
}
