import type { Errors } from '../check/build';
import type { CellLook, Censoring, Measurand, TestMethod } from '../contract';
import { CombinedLine } from './CombinedLine';
import { countsTablets, looksOf } from '../check/methods';
import { span } from '../format/age';
import { serverNow } from '../live/clock';
import { zone } from '../live/store';
import { typedUnit } from '../format/units';
import { Remark, tie } from '../parts/Field';
import { WarnGlyph } from '../parts/Glyph';
import { focusFirstWrong } from '../parts/mending';
import { ReagentHint } from '../reagents/ReagentHint';
import { words } from '../words';
import { Dilute } from './Dilute';
import { Frame } from './Frame';
import { guideOf } from './guides';
import { QuietWords } from './QuietWords';
import { lateBy, nextScreen, type Round, type Stop } from './round';
import { Steps } from './Steps';
import { editRow, editStop, methodsOf, rowOf, show, stopOf } from './store';
import { TabletCounter } from './TabletCounter';
import { TestClock } from './TestClock';
import { wrongOn } from './wrong';

const w = words.round;

function Seen({ m, stop }: { m: Measurand; stop: Stop }) {
  const row = rowOf(stop.draft, m), looks = looksOf(m, row), look = row.look ?? 'none';
  if (looks.length === 0) return null;
  const advice: Partial<Record<CellLook, string>> = { pink_flash: w.seenBleached, purple: w.seenPurple, cloudy: w.seenCloudy };
  return (
    <fieldset class="field"><legend class="label">{w.seen}</legend>
      <div class="choices">{looks.map(x => <label key={x} class="choice"><input type="radio" name="look" checked={look === x} data-testid={`look-${x}`} onChange={() => editRow(m, { look: x })} />{words.methods.looks[x]}</label>)}</div>
      {advice[look] && <p class="notice" role="status" data-testid="seen-advice">{advice[look]}</p>}
    </fieldset>
  );
}

/** Read later than its window: said where it bites, with a fresh vial one press away. */
function Late({ m, stop }: { m: Measurand; stop: Stop }) {
  const late = lateBy(stop, m);
  if (late === null) return null;
  const again = () => editStop(s => {
    const rows = { ...s.draft.rows }, readAt = { ...s.readAt };
    rows[m] = { ...rowOf(s.draft, m), text: '' };
    delete readAt[m];
    return { ...s, readAt, timers: s.timers.filter(t => t.m !== m), draft: { ...s.draft, rows } };
  });
  return (
    <div class="notice" role="status" data-testid="late-read"><p class="mark"><WarnGlyph /><b>{w.lateRead(words.measurand[m], span(late))}</b></p>
      <p>{m === 'free_chlorine' ? w.lateFree : w.lateOther}</p><button type="button" class="slim" data-testid="fresh-vial" onClick={again}>{w.freshVial}</button></div>
  );
}

function Reading({ m, stop, error, onEnter }: { m: Measurand; stop: Stop; error: string | undefined; onEnter: () => void }) {
  const row = rowOf(stop.draft, m);
  return (
    <div class={`field ${error ? 'wrong' : ''}`}>
      <label class="label" for={'f-' + m}>{w.reading}, {w.readingHint}</label>
      <div class="result-line">
        <input class="big huge" type="text" inputMode="decimal" autocomplete="off" enterkeyhint="next" value={row.text} {...tie(m, error)} onInput={e => editRow(m, { text: e.currentTarget.value })}
          onKeyDown={e => { if (e.key === 'Enter') onEnter(); }} />
        <span class="unit">{typedUnit(m)}</span>
      </div>
      <Remark name={m} text={error} />
      <select class="slim" value={row.bound} aria-label={words.check.bound} data-testid={'bound-' + m} onChange={e => editRow(m, { bound: e.currentTarget.value as Censoring })}>
        {(['none', 'below', 'above'] as const).map(b => <option key={b} value={b}>{w.bound[b]}</option>)}
      </select>
    </div>
  );
}

/** One test: its method, its steps, its clock, its figure. */
export function TestScreen({ round, m }: { round: Round; m: Measurand }) {
  const stop = stopOf(round), row = rowOf(stop.draft, m), methods = methodsOf(m), guide = guideOf(m, row.method);
  const errors: Errors = wrongOn(stop, m, zone.value, serverNow()), isWrong = Object.keys(errors).length > 0, isEmpty = row.text.trim() === '';
  const on = () => show(nextScreen(stop, m, round.mending));
  // What cannot be sent is mended here or emptied: further on it would look as if it had been left out.
  const go = () => isWrong ? focusFirstWrong() : on();
  const leave = () => { editStop(s => ({ ...s, left: [...s.left.filter(x => x !== m), m] })); on(); };
  return (
    <Frame round={round} primary={isEmpty ? w.leaveOut : round.mending ? w.look : w.next} onPrimary={isEmpty ? leave : go}>
      {methods.length > 1 && (
        <fieldset class="field"><legend class="sr">{w.method}</legend>
          <div class="choices methods">{methods.map(x => <label key={x} class="choice"><input type="radio" name="method" checked={row.method === x} data-testid={`method-${x}`} onChange={() => editRow(m, { method: x as TestMethod, ...(x === 'meter' || x === 'tablet_count' ? { dilution: '' } : {}) })} />{words.method[x]}</label>)}</div></fieldset>)}
      <Steps key={m + row.method} id={`${m}.${row.method}`} steps={guide.steps.map(s => w.step[s])} care={guide.care.map(t => w.trap[t])} traps={guide.traps.map(t => w.trap[t])} />
      <ReagentHint m={m} method={row.method} />
      <TestClock key={'c' + m + row.method} stop={stop} m={m} method={row.method} />
      <Seen m={m} stop={stop} />
      {countsTablets(m, row) ? <TabletCounter m={m} row={row} /> : <Reading m={m} stop={stop} error={errors[m]} onEnter={() => { if (!isEmpty) go(); }} />}
      <Dilute key={'d' + m} stop={stop} m={m} asked={row.look === 'pink_flash'} error={errors['dilution-' + m]} />
      <Late m={m} stop={stop} />
      {!isWrong && <QuietWords stop={stop} m={m} />}
      {m === 'total_chlorine' && !isWrong && <CombinedLine stop={stop} />}
    </Frame>
  );
}
