import { useState } from 'preact/hooks';
import { recall, remember } from '../api/kept';
import { WarnGlyph } from '../parts/Glyph';
import { words } from '../words';

const w = words.round;

/** Steps that a practised person folds away, remembered on the device by the test and its method. What leads astray stays in sight. */
export function Steps({ id, steps, care, traps }: { id: string; steps: string[]; care: string[]; traps: string[] }) {
  const [open, set] = useState(recall('steps.' + id) !== 'folded');
  return (
    <>
      <details class="sheet card steps" open={open} data-testid="steps" onToggle={e => { set(e.currentTarget.open); remember('steps.' + id, e.currentTarget.open ? null : 'folded'); }}>
        <summary><h2>{w.steps}</h2></summary>
        <ol>{steps.map(s => <li key={s}>{s}</li>)}</ol>
        {care.map(c => <p key={c} class="hint">{c}</p>)}
        <p class="hint">{w.kitHolds} {w.stepsKept}</p>
      </details>
      {traps.length > 0 && <ul class="mind" data-testid="mind">{traps.map(t => <li key={t}><WarnGlyph /><span>{t}</span></li>)}</ul>}
    </>
  );
}
