import { useState } from 'preact/hooks';
import type { OutOfServiceView, RuleView } from '../contract.alarms';
import { ReturnForm } from '../alarms/ServiceForms';
import { fullClock } from '../format/zone';
import { zone } from '../live/store';
import { Age } from '../parts/Age';
import { link } from '../router';
import { words } from '../words';

const w = words.rulesPage;

function Out({ rule, out, reload }: { rule: RuleView; out: OutOfServiceView; reload: () => void }) {
  const [open, setOpen] = useState(false);
  return (
    <li data-testid={`out-${out.subject}`}>
      <p><a href={link('alarm', out.id)}>{rule.title}</a> <span class="hint">{rule.number} {'\u00b7'} {out.name}</span></p>
      <p>{out.why} <span class="hint">{w.outBy(out.by ?? '')}, <Age at={out.at} />; {out.until ? w.outUntil(fullClock(out.until, zone.value)) : w.open}</span></p>
      {open ? <ReturnForm rule={rule.number} subject={out.subject} onDone={() => { setOpen(false); reload(); }} /> : <div class="inline"><button type="button" data-testid={`return-${out.subject}`} onClick={() => setOpen(true)}>{w.giveBack}</button></div>}
    </li>
  );
}

/** What nobody is called by at present, who put it away, why and until when. */
export function OutList({ rules, reload }: { rules: RuleView[]; reload: () => void }) {
  const all = rules.flatMap(rule => rule.outOfService.map(out => ({ rule, out })));
  return (
    <section class="sheet card" data-testid="out-of-service"><h2>{w.out}</h2>
      {all.length === 0 ? <p class="hint">{w.nothingOut}</p> : <ul class="out-list">{all.map(x => <Out key={x.out.id} {...x} reload={reload} />)}</ul>}
    </section>
  );
}
