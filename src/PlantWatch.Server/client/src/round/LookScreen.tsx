import { useState } from 'preact/hooks';
import type { Errors } from '../check/build';
import { resultOf } from '../check/build';
import { rowOf } from '../check/draft';
import { nameOfField } from '../check/fields';
import type { Measurand } from '../contract';
import { decimalsOf, unitOf } from '../format/number';
import { beside } from '../format/units';
import { outside } from '../limits/stops';
import { serverNow } from '../live/clock';
import { limitsOfPool, nameOf, zone } from '../live/store';
import { besideLimit, limitOf } from '../parts/beyond';
import { Remark } from '../parts/Field';
import { WarnGlyph } from '../parts/Glyph';
import { MendLine } from '../parts/MendLine';
import { focusFirstWrong } from '../parts/mending';
import { words } from '../words';
import { CombinedLine } from './CombinedLine';
import { Frame } from './Frame';
import { poolLeft, type Round, type Stop } from './round';
import { noteOf, saveStop } from './send';
import { editStop, setRound, show, stopOf } from './store';
import { screenOf, wrongIn } from './wrong';

const w = words.round;

/** One test as it will be saved, which leads back to its screen. What cannot be sent stands as it was typed. */
function Line({ stop, m, error }: { stop: Stop; m: Measurand; error: string | undefined }) {
  const value = resultOf(stop.draft, m), row = rowOf(stop.draft, m), out = error ? null : outside(stop.draft.poolId, m, value);
  const shown = error && row.text ? row.text : value === null ? w.leftOut : `${row.bound === 'below' ? '< ' : row.bound === 'above' ? '> ' : ''}${besideLimit(value, limitOf(limitsOfPool(stop.draft.poolId), m), decimalsOf(m))} ${unitOf(m)}`;
  return (
    <li class={error ? 'wrong' : ''}><button type="button" class="look-line" onClick={() => show(m, true)} data-testid={`look-${m}`}>
      <span>{words.measurand[m]}<span class="hint"> {words.method[row.method]}</span></span>
      <b>{shown}{value !== null && !error && beside(m, value) && <span class="hint"> {beside(m, value)}</span>}</b>
    </button>{out && <p class="beyond"><WarnGlyph />{out.says}</p>}<Remark name={m} text={error} /></li>
  );
}

/** What is wrong beside the tests: by name, and the way to where it is mended. */
function Other({ stop, field, text }: { stop: Stop; field: string; text: string }) {
  return <li class="wrong"><button type="button" class="look-line" onClick={() => show(screenOf(stop, field)!, true)} data-testid={`look-${field}`}><span>{nameOfField(field)}</span></button><Remark name={field} text={text} /></li>;
}

/** The check once more as it will be saved; each line leads back to its screen. */
export function LookScreen({ round }: { round: Round }) {
  const stop = stopOf(round);
  const [said, say] = useState<Errors>({});
  const [busy, setBusy] = useState(false);
  const note = noteOf(stop), errors: Errors = { ...said, ...wrongIn(stop, zone.value, serverNow()) };
  const save = async () => {
    if (busy) return;
    setBusy(true);
    const saved = await saveStop(stop, round.who);
    setBusy(false);
    if ('errors' in saved) { say(saved.errors); return focusFirstWrong(); }
    editStop(s => ({ ...s, checkId: saved.id }));
    show('answer');
  };
  const leave = () => {
    if (!confirm(w.leaveSure(nameOf(stop.draft.poolId)))) return;
    setRound(poolLeft(round));
    scrollTo(0, 0);
  };
  const nothing = stop.what.every(m => !stop.draft.rows[m]?.text) && stop.draft.bottom === '' && stop.draft.bathers === '' && Object.values(stop.draft.panel).every(t => t === '');
  const other = Object.entries(errors).filter(([k]) => !stop.what.some(m => k === m || k === 'dilution-' + m));
  return (
    <Frame round={round} primary={w.save} onPrimary={() => void save()}>
      <ul class="sheet look-list" data-testid="look-list">
        {stop.what.map(m => <Line key={m} stop={stop} m={m} error={errors[m] ?? errors['dilution-' + m]} />)}
        {other.filter(([field]) => screenOf(stop, field)).map(([field, text]) => <Other key={field} stop={stop} field={field} text={text} />)}
      </ul>
      <CombinedLine stop={stop} />
      {note && <p class="sheet card">{note}</p>}
      {nothing && <div class="notice"><p>{w.nothing}</p><button type="button" data-testid="leave-pool" onClick={leave}>{w.leavePool}</button></div>}
      <MendLine errors={errors} />
      {other.filter(([field]) => !screenOf(stop, field)).map(([field, text]) => <Remark key={field} name={field} text={text} />)}
    </Frame>
  );
}
