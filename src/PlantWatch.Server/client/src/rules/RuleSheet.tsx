import { useState } from 'preact/hooks';
import type { RuleView } from '../contract.alarms';
import { TakeOutForm } from '../alarms/ServiceForms';
import { Age } from '../parts/Age';
import { PriorityGlyph } from '../parts/Glyph';
import { words } from '../words';

const w = words.rulesPage;

function Machine({ rule }: { rule: RuleView }) {
  return (
    <dl class="facts">
      <dt>{w.onDelay}</dt><dd>{rule.onDelay}</dd><dt>{w.offDelay}</dt><dd>{rule.offDelay}</dd><dt>{w.deadband}</dt><dd>{rule.deadband}</dd>
      <dt>{w.clears}</dt><dd>{rule.clears}</dd><dt>{w.suppressed}</dt><dd>{rule.suppressed}</dd>
      <dt>{w.again}</dt><dd>{rule.reAlarmMinutes === null ? w.never : w.againAfter(String(rule.reAlarmMinutes / 60))}</dd>
      <dt>{w.provenance}</dt><dd>{rule.provenance}</dd>
    </dl>
  );
}

function Service({ rule, reload }: { rule: RuleView; reload: () => void }) {
  const [open, setOpen] = useState(false);
  if (!rule.mayLeaveService) return <p class="hint">{rule.shelvable ? w.eachItsOwn : w.safety}</p>;
  const free = rule.subjects.filter(s => !rule.outOfService.some(o => o.subject === s.subject));
  if (rule.subjects.length === 0) return <p class="hint">{w.nothingHere}</p>;
  if (open) return <TakeOutForm rule={rule.number} subjects={free} onDone={() => { setOpen(false); reload(); }} />;
  return free.length === 0 ? null : <div class="inline"><button type="button" class="quiet-button" data-testid={`take-out-${rule.number}`} aria-label={w.taking(rule.number)} onClick={() => setOpen(true)}>{w.take}</button></div>;
}

/** One rule as its page says it, with what it did here; open when the address names it. */
export function RuleSheet({ rule, named, reload }: { rule: RuleView; named: boolean; reload: () => void }) {
  return (
    <li class={`sheet card rule ${named ? 'named' : ''}`} id={rule.number} data-testid={`rule-${rule.number}`}>
      <details open={named}>
        <summary><span class="rule-head"><b>{rule.number}</b><span class="rule-title">{rule.title}</span><span class="mark"><PriorityGlyph priority={rule.priority} />{words.priority[rule.priority]}</span></span>
          <span class="hint" data-testid={`rang-${rule.number}`}>{w.rang(rule.rang)}{rule.lastRang && <>, {w.last} <Age at={rule.lastRang} /></>}{rule.standing > 0 && <> {'\u00b7'} <b>{w.standing(rule.standing)}</b></>}</span></summary>
        <div class="stack">
          <p>{rule.sentence}</p>
          <dl class="alarm-says">
            <div><dt>{w.cause}</dt><dd>{rule.cause}</dd></div>
            <div><dt>{w.consequence}</dt><dd>{rule.consequence}</dd></div>
            <div class="todo"><dt>{w.action}</dt><dd>{rule.action}</dd></div>
            <div><dt>{w.time}</dt><dd>{rule.timeToRespond}</dd></div>
          </dl>
          <Machine rule={rule} />
          <Service rule={rule} reload={reload} />
        </div>
      </details>
    </li>
  );
}
