import type { WhatIfLimitsResult, WhatIfLimitsRun } from '../contract.whatIfLimits';
import { coarse, grouped } from '../format/number';
import { dayClock } from '../format/zone';
import { zone } from '../live/store';
import { words } from '../words';
import { AlarmsOf } from './AlarmsOf';

const w = words.whatIfLimits;
const dayLong = 86_400_000;
const say = (v: number | null) => coarse(v, 2);
// The rest hangs on people and not on limits.
const told = ['most', 'floods', 'most_standing', 'stale', 'chattering', 'fleeting', 'busiest_share'];

function Sides({ result }: { result: WhatIfLimitsResult }) {
  const { before, after } = result;
  const rows: [string, string, string][] = [
    [w.alarms, say(before.alarms), say(after.alarms)], [w.stoodHours, say(before.stoodHours), say(after.stoodHours)], [w.calls, say(before.told), say(after.told)], [w.perHour, say(before.perHour), say(after.perHour)],
    ...before.figures.filter(f => told.includes(f.key)).map((f): [string, string, string] => {
      const other = after.figures.find(g => g.key === f.key)?.value ?? null;
      return [f.name, `${say(f.value)} ${f.unit}`.trim(), `${say(other)} ${f.unit}`.trim()];
    }),
  ];
  return (
    <table class="lines two-sides" data-testid="sides"><thead><tr><th scope="col">{w.figure}</th><th scope="col">{w.asStands}</th><th scope="col">{w.changed}</th></tr></thead>
      <tbody>{rows.map(([name, a, b]) => <tr key={name}><th scope="row">{name}</th><td class="n">{a}</td><td class="n">{b}</td></tr>)}</tbody></table>);
}

function Rules({ result }: { result: WhatIfLimitsResult }) {
  const rules = result.rules.filter(r => r.before + r.after > 0);
  return rules.length === 0 ? <p class="hint">{w.none}</p> : (
    <div class="scroll" tabIndex={0} role="region" aria-label={w.byRule}><table class="lines by-rule" data-testid="by-rule">
      <thead><tr><th scope="col">{w.rule}</th><th scope="col">{w.asStands}</th><th scope="col">{w.changed}</th><th scope="col">{w.lostShort}</th><th scope="col">{w.gainedShort}</th></tr></thead>
      <tbody>{rules.map(r => <tr key={r.rule} class={r.lost + r.gained > 0 ? 'moved' : ''}><th scope="row">{r.title} <span class="hint block">{r.rule} {'\u00b7'} {words.priority[r.priority]}</span></th>
        <td>{r.before}{r.before > 0 && <span class="hint block">{w.hours(say(r.hoursBefore))}</span>}</td><td>{r.after}{r.after > 0 && <span class="hint block">{w.hours(say(r.hoursAfter))}</span>}</td><td class={r.lost > 0 ? 'n' : ''}>{r.lost}</td><td class={r.gained > 0 ? 'n' : ''}>{r.gained}</td></tr>)}</tbody></table></div>);
}

/** What came out of a run, in a sentence first. */
export function Answer({ run, result }: { run: WhatIfLimitsRun; result: WhatIfLimitsResult }) {
  const days = say((Date.parse(run.to) - Date.parse(run.from)) / dayLong);
  const lead = w.sentence(days, result.lostCount, result.gainedCount);
  return <>
    <section class="sheet card">
      <h2>{w.answer}</h2>
      <p class="answer-lead" data-testid="answer"><b>{result.lostCount + result.gainedCount === 0 ? lead : `${lead}; ${w.critical(result.lostCritical)}.`}</b></p>
      <p data-testid="answer-load">{w.load(say(result.after.told), say(result.before.told), say(result.after.stoodHours), say(result.before.stoodHours))}</p>
      {run.lines.map(l => <p key={l.line + l.pool} class="asked">{l.poolName}: {l.line.replace(/^- \{ | \}$|, source: .*/g, '')}</p>)}
      <p class="hint">{w.span(dayClock(run.from, zone.value), dayClock(run.to, zone.value))}</p>
      <Sides result={result} />
    </section>
    <section class="sheet card"><h2>{w.byRule}</h2><Rules result={result} /></section>
    <section class="sheet card" data-testid="lost"><h2>{w.lost} ({result.lostCount})</h2><p class="hint">{w.lostMeans}</p><AlarmsOf alarms={result.lost} all={result.lostCount} /></section>
    <section class="sheet card" data-testid="gained"><h2>{w.gained} ({result.gainedCount})</h2><p class="hint">{w.gainedMeans}</p><AlarmsOf alarms={result.gained} all={result.gainedCount} /></section>
    <section class="sheet card" data-testid="sure"><h2>{w.sure}</h2>
      <p>{w.fidelity(String(result.foundAgain), String(result.recorded), String(result.notRecorded))}</p>
      <ul class="notes">{result.notes.map(n => <li key={n.code + n.text}>{n.text}</li>)}</ul>
      <p class="hint">{w.took(grouped(result.readings), say(result.seconds))}</p></section>
  </>;
}
