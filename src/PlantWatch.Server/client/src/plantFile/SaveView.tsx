import { useState } from 'preact/hooks';
import type { PlantFileCheck, PlantFileView } from '../contract.plantFile';
import { Field, OtherRemarks, tie } from '../parts/Field';
import { NameField } from '../parts/NameField';
import { who } from '../parts/person';
import { useAction } from '../parts/useAction';
import { words } from '../words';
import { Difference } from './Difference';
import { save, type Draft } from './draft';

const w = words.plantFile;

/** Before anything is saved: how the file changes, what the plant does then, and who says so. */
export function SaveView({ draft, check, writable, onSaved, onConflict, onGiveUp }: {
  draft: Draft; check: PlantFileCheck | null; writable: boolean; onSaved: (view: PlantFileView) => void; onConflict: () => void; onGiveUp: () => void;
}) {
  const [why, setWhy] = useState('');
  const [asked, setAsked] = useState(false);
  const [copied, setCopied] = useState('');
  const { busy, errors, run, setErrors } = useAction<PlantFileView>(onSaved);
  const send = async () => {
    if (!who.value.trim()) return setErrors({ by: words.needName });
    await run(async () => {
      const answer = await save(draft.text, draft.digest, who.value.trim(), why);
      if (!answer.ok && answer.problem?.status === 412) onConflict();
      return answer;
    });
  };
  const copy = () => navigator.clipboard?.writeText(draft.text).then(() => setCopied(w.copied), () => setCopied(w.notCopied)) ?? setCopied(w.notCopied);
  const wrong = (check?.problems.length ?? 0) > 0 || draft.waiting.length > 0;
  return (
    <section class="sheet card" data-testid="file-save" aria-labelledby="file-unsaved">
      <h2 id="file-unsaved">{w.unsaved}</h2>
      <p class="hint">{w.unsavedMeans}</p>
      {check === null ? <p class="hint" role="status">{words.loading}</p> : <>
        <h3>{w.changes}</h3>
        <Difference lines={check.diff} />
        {!wrong && <><h3>{w.effects}</h3>
          {check.effects.length === 0 ? <p class="hint">{w.noEffect}</p> : <ul class="plain" data-testid="file-effects">{check.effects.map((e, i) => <li key={i}>{e.text}</li>)}</ul>}</>}
      </>}
      {writable ? <>
        <NameField name="by" label={w.by} error={errors['by']} />
        <Field name="why" label={w.why} error={errors['why']} hint={w.whyHint}><input type="text" value={why} {...tie('why', errors['why'])} onInput={e => setWhy(e.currentTarget.value)} /></Field>
        <OtherRemarks errors={errors} shown={['by', 'why']} />
        {wrong && <p class="hint">{w.mustFix}</p>}
      </> : <p class="notice" data-testid="file-read-only">{w.readOnly}</p>}
      <div class="inline">
        {writable && <button class="primary" type="button" data-testid="save-file" disabled={busy || wrong} onClick={() => void send()}>{busy ? w.saving : w.save}</button>}
        <button type="button" onClick={copy}>{w.copy}</button><span role="status">{copied}</span>
        {asked ? <><button type="button" data-testid="give-up" onClick={onGiveUp}>{w.sure}</button><button type="button" onClick={() => setAsked(false)}>{w.keep}</button></>
          : <button class="quiet-button" type="button" data-testid="ask-give-up" onClick={() => setAsked(true)}>{w.giveUp}</button>}
      </div>
    </section>
  );
}
