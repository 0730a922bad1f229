import { useState } from 'preact/hooks';
import type { Errors } from '../check/build';
import { resultOf } from '../check/build';
import { rowOf } from '../check/draft';
import { decimalsOf, fixed, unitOf } from '../format/number';
import { beside } from '../format/units';
import { limitsOfPool, nameOf } from '../live/store';
import { beyond, limitOf } from '../parts/beyond';
import { Remark } from '../parts/Field';
import { WarnGlyph } from '../parts/Glyph';
import { words } from '../words';
import { CombinedLine } from './CombinedLine';
import { Frame } from './Frame';
import { poolLeft, type Round } from './round';
import { noteOf, saveStop } from './send';
import { editStop, setRound, show, stopOf } from './store';

const w = words.round;

/** The check once more as it will be saved; each line leads back to its screen. */
export function LookScreen({ round }: { round: Round }) {
  const stop = stopOf(round);
  const [errors, setErrors] = useState<Errors>({});
  const [busy, setBusy] = useState(false);
  const note = noteOf(stop);
  const save = async () => {
    if (busy) return;
    setBusy(true);
    const saved = await saveStop(stop, round.who);
    setBusy(false);
    if ('errors' in saved) return setErrors(saved.errors);
    editStop(s => ({ ...s, checkId: saved.id }));
    show('answer');
  };
  const leave = () => {
    if (!confirm(w.leaveSure(nameOf(stop.draft.poolId)))) return;
    setRound(poolLeft(round));
    scrollTo(0, 0);
  };
  const nothing = stop.what.every(m => !stop.draft.rows[m]?.text) && stop.draft.bottom === '' && stop.draft.bathers === '' && Object.values(stop.draft.panel).every(t => t === '');
  return (
    <Frame round={round} primary={w.save} onPrimary={() => void save()}>
      <ul class="sheet look-list" data-testid="look-list">
        {stop.what.map(m => {
          const value = resultOf(stop.draft, m), row = rowOf(stop.draft, m), out = beyond(value, limitOf(limitsOfPool(stop.draft.poolId), m));
          return (
            <li key={m}><button type="button" class="look-line" onClick={() => show(m)} data-testid={`look-${m}`}>
              <span>{words.measurand[m]}<span class="hint"> {words.method[row.method]}</span></span>
              <b>{value === null ? w.leftOut : `${row.bound === 'below' ? '< ' : row.bound === 'above' ? '> ' : ''}${fixed(value, decimalsOf(m))} ${unitOf(m)}`}{value !== null && beside(m, value) && <span class="hint"> {beside(m, value)}</span>}</b>
            </button>{out && <p class="beyond"><WarnGlyph />{out}</p>}<Remark name={m} text={errors[m] ?? errors['dilution-' + m]} /></li>);
        })}
      </ul>
      <CombinedLine stop={stop} />
      {note && <p class="sheet card">{note}</p>}
      {nothing && <div class="notice"><p>{w.nothing}</p><button type="button" data-testid="leave-pool" onClick={leave}>{w.leavePool}</button></div>}
      {Object.entries(errors).filter(([k]) => !stop.what.some(m => k === m || k === 'dilution-' + m)).map(([k, text]) => <Remark key={k} name={k} text={text} />)}
    </Frame>
  );
}
