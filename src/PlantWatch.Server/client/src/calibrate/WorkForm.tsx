import { useState } from 'preact/hooks';
import type { ProbeWork } from '../contract.bench';
import type { Measurand } from '../contract';
import { Remark } from '../parts/Field';
import { words } from '../words';
import type { BenchDraft } from './draft';

const w = words.calibrate.work;

const kindsOf = (m: Measurand): ProbeWork[] =>
  m === 'ph' ? ['cleaned', 'electrode_replaced', 'electrolyte_refilled'] : m === 'orp' ? ['cleaned', 'polished', 'electrode_replaced', 'electrolyte_refilled'] : ['cleaned', 'membrane_replaced', 'electrolyte_refilled', 'electrode_replaced'];

/** What was done to the probe between as found and calibrated. Nothing is chosen beforehand. */
export function WorkForm({ draft, measurand, mayLeave, panel, onChange, onNext }: { draft: BenchDraft; measurand: Measurand; mayLeave: boolean; panel: boolean; onChange: (change: Partial<BenchDraft>) => void; onNext: () => void }) {
  const [tried, setTried] = useState(false);
  const toggle = (kind: ProbeWork) => onChange({ untouched: false, work: draft.work.includes(kind) ? draft.work.filter(k => k !== kind) : [...draft.work, kind] });
  const said = draft.untouched || draft.work.length > 0 || panel;
  return (
    <>
      <p>{panel ? w.onPanel : w.lead}</p>
      <div class="work-kinds" role="group" aria-label={w.title}>{kindsOf(measurand).map(kind => (
        <label key={kind} class="choice"><input type="checkbox" checked={draft.work.includes(kind)} data-testid={`work-${kind}`} onChange={() => toggle(kind)} />
          <span>{w.kinds[kind]}{draft.work.includes(kind) && w.starts[kind] && <span class="hint block">{w.starts[kind]}</span>}</span></label>))}
        {mayLeave && <label class="choice"><input type="checkbox" checked={draft.untouched} data-testid="work-none" onChange={() => onChange({ untouched: !draft.untouched, work: [] })} />{w.nothing}</label>}</div>
      {tried && !said && <Remark name="work" text={w.need} />}
      <div class="submit-bar"><button type="button" class="primary" data-testid="next" onClick={() => (said ? onNext() : setTried(true))}>{words.calibrate.next}</button></div>
    </>
  );
}
