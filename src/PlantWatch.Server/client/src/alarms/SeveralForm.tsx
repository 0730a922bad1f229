import { useState } from 'preact/hooks';
import { post } from '../api/http';
import type { AlarmView } from '../contract';
import { Field, Remark, tie } from '../parts/Field';
import { focusFirstWrong, formInHand } from '../parts/mending';
import { NameField } from '../parts/NameField';
import { PriorityGlyph } from '../parts/Glyph';
import { who } from '../parts/person';
import { words } from '../words';
import { families, isAside } from './order';

const w = words.alarmList;

/** Alarms that may share a comment: in sight in the list, not critical, not yet acknowledged. */
export const mayShare = (all: AlarmView[]) => families(all.filter(a => !isAside(a))).map(f => f.cause).filter(a => !a.acknowledged && a.priority !== 'critical');

/** Acknowledges several with one comment. What comes while the form is open is not among them: nobody has seen it. */
export function SeveralForm({ shown, onDone }: { shown: AlarmView[]; onDone: () => void }) {
  const [listed, setListed] = useState(shown);
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  const [comment, setComment] = useState('');
  const [errors, setErrors] = useState<Record<string, string>>({});
  const [busy, setBusy] = useState(false);
  const chosen = listed.filter(a => !left.has(a.id));
  const toggle = (id: string) => setLeft(l => { const next = new Set(l); if (!next.delete(id)) next.add(id); return next; });
  const send = async () => {
    const missing = { ...(chosen.length ? {} : { several: w.needOne }), ...(comment.trim() ? {} : { comment: w.needComment }), ...(who.value.trim() ? {} : { by: words.needName }) };
    setErrors(missing);
    if (Object.keys(missing).length) return focusFirstWrong(formInHand());
    if (busy) return;
    setBusy(true);
    const refused: AlarmView[] = [], why: string[] = [];
    for (const a of chosen) {
      const answer = await post<AlarmView>(`/alarms/${encodeURIComponent(a.id)}/acknowledge`, { by: who.value.trim(), comment: comment.trim() });
      if (!answer.ok) { refused.push(a); why.push(answer.problem?.errors[0]?.text ?? answer.problem?.title ?? words.error.unreachable); }
    }
    setBusy(false);
    if (refused.length === 0) return onDone();
    setListed(refused);
    setErrors({ several: `${w.notTaken(refused.length)} ${[...new Set(why)].join(' ')}` });
  };
  return (
    <form class="sheet card action" noValidate data-testid="several" onSubmit={e => { e.preventDefault(); void send(); }}>
      <h2>{w.severalTitle}</h2>
      <p class="hint">{w.severalLead}</p>
      <ul class="several">{listed.map(a => (
        <li key={a.id}><label class="choice-line"><input type="checkbox" checked={!left.has(a.id)} data-testid={`choose-${a.subject}`} onChange={() => toggle(a.id)} />
          <PriorityGlyph priority={a.priority} /><span><b>{a.title}</b> <span class="hint">{a.subjectName}</span></span></label></li>))}</ul>
      <Remark name="several" text={errors['several']} />
      <Field name="several-comment" label={w.severalComment} error={errors['comment']}><input type="text" value={comment} {...tie('several-comment', errors['comment'])} onInput={e => setComment(e.currentTarget.value)} /></Field>
      <NameField name="several-by" error={errors['by']} />
      <div class="inline"><button type="submit" class="primary" disabled={busy} data-testid="confirm-several">{w.acknowledgeN(chosen.length)}</button><button type="button" onClick={onDone}>{words.cancel}</button></div>
    </form>
  );
}
