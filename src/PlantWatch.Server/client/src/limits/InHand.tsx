import type { Errors } from '../check/build';
import { Field, tie } from '../parts/Field';
import { setWho, who } from '../parts/person';
import { words } from '../words';
import { documentInHand, setDocument } from './document';

const w = words.limits;

const nameOf = (circuit: string, field: 'by' | 'document') => `limits-${field}-${circuit}`;

/** What a row lacked of these fields is told by the field, and the hand goes there: the row may be far below. */
export function goTo(circuit: string, missing: Errors): void {
  const field = missing['by'] ? 'by' : 'document';
  setTimeout(() => document.getElementById('f-' + nameOf(circuit, field))?.focus(), 0);
}

/** Who sits here and what lies on the table: typed once, used by every row below. */
export function InHand({ circuit, may, errors, onTyped }: { circuit: string; may: string[]; errors: Errors; onTyped: (field: 'by' | 'document') => void }) {
  const by = nameOf(circuit, 'by'), text = nameOf(circuit, 'document');
  return (
    <div class="in-hand">
      <Field name={by} label={w.by} error={errors['by']} hint={may.length > 0 ? w.may(may.join(', ')) : w.anybody}>
        <input type="text" class="tall" list={`may-${circuit}`} autocomplete="off" value={who.value} {...tie(by, errors['by'])} onInput={e => { setWho(e.currentTarget.value); onTyped('by'); }} />
        <datalist id={`may-${circuit}`}>{may.map(n => <option key={n} value={n} />)}</datalist>
      </Field>
      <Field name={text} label={w.document} error={errors['document']} hint={w.documentHint}>
        <input type="text" class="tall" autocomplete="off" value={documentInHand.value} {...tie(text, errors['document'])} onInput={e => { setDocument(e.currentTarget.value); onTyped('document'); }} />
      </Field>
    </div>
  );
}
