import { Field, tie } from '../parts/Field';
import { setWho, who } from '../parts/person';
import { words } from '../words';
import { documentInHand, setDocument } from './document';

const w = words.limits;

/** Who sits here and what lies on the table: typed once, used by every row below. */
export function InHand({ circuit, may }: { circuit: string; may: string[] }) {
  const by = `limits-by-${circuit}`, text = `limits-document-${circuit}`;
  return (
    <div class="in-hand">
      <Field name={by} label={w.by} hint={may.length > 0 ? w.may(may.join(', ')) : w.anybody}>
        <input type="text" class="tall" list={`may-${circuit}`} autocomplete="off" value={who.value} {...tie(by)} onInput={e => setWho(e.currentTarget.value)} />
        <datalist id={`may-${circuit}`}>{may.map(n => <option key={n} value={n} />)}</datalist>
      </Field>
      <Field name={text} label={w.document} hint={w.documentHint}>
        <input type="text" class="tall" autocomplete="off" value={documentInHand.value} {...tie(text)} onInput={e => setDocument(e.currentTarget.value)} />
      </Field>
    </div>
  );
}
