import type { GivenDoseView } from '../contract.dose';
import { decimalsOf, signed, unitOf } from '../format/number';
import { clock, fullClock } from '../format/zone';
import { zone } from '../live/store';
import { TickGlyph, WarnGlyph } from '../parts/Glyph';
import { words } from '../words';

const w = words.dose;

/** Doses given, newest first, each with what was predicted and what the retest found. */
export function GivenList({ given, correct }: { given: GivenDoseView[]; correct: (dose: GivenDoseView) => void }) {
  return (
    <section class="sheet card given-list" data-testid="given-list">
      <h2>{w.list}</h2>
      {given.length === 0 && <p class="hint">{w.none}</p>}
      <ul>{given.map(g => (
        <li key={g.dose.id} class={g.corrected ? 'gone' : ''} data-testid="given">
          <div class="judgement-head"><b>{g.dose.product}, {g.amount.text}</b><span class="hint">{fullClock(g.dose.givenAt, zone.value)}, {g.dose.by}</span></div>
          {g.dose.note && <p>{g.dose.note}</p>}
          {g.dose.corrects && <p class="hint">{w.corrects}: {g.dose.correctionReason}</p>}
          {g.corrected ? <p class="hint">{w.corrected}</p> : <Came given={g} />}
          {!g.corrected && <button type="button" class="slim" onClick={() => correct(g)}>{w.correct}</button>}
        </li>))}</ul>
    </section>
  );
}

function Came({ given }: { given: GivenDoseView }) {
  if (given.responses.length === 0) return (
    <p class="hint">{given.dose.predicted.map(p => `${words.measurand[p.measurand] ?? p.measurand} ${signed(p.change, decimalsOf(p.measurand))}${unitOf(p.measurand) && '\u00a0' + unitOf(p.measurand)}`).join(', ')}{given.dose.predicted.length > 0 && '. '}
      {w.noRetest}; {w.retestFrom(clock(given.dose.mixedAt, zone.value))}</p>);
  return (
    <>{given.responses.flatMap(r => r.figures.map(f => (
      <p key={r.checkId + f.measurand} class="response" data-testid={'response-' + f.measurand}>{f.word === 'as_predicted' ? <TickGlyph /> : <WarnGlyph />}<span>{f.text}</span></p>)))}</>
  );
}
