import { useState } from 'preact/hooks';
import type { BackwashView, FilterView } from '../contract.filter';
import { fixed } from '../format/number';
import { dayClock } from '../format/zone';
import { zone } from '../live/store';
import { Age } from '../parts/Age';
import { WarnGlyph } from '../parts/Glyph';
import { words } from '../words';
import { WashForm, type WashAct } from './WashForm';

const w = words.filters;
const m3 = (value: number) => `${fixed(value, 1)}\u00a0m\u00b3`;
const kPa = (value: number) => `${fixed(value, 0)}\u00a0kPa`;

/** When it ends, and how long it silences: its quiet may be used up. */
function quietOf({ since, until, quietUntil }: BackwashView): string {
  const at = (time: string) => dayClock(time, zone.value);
  if (quietUntil >= until) return w.until(at(until));
  return quietUntil > since ? w.quietUntil(at(until), at(quietUntil)) : w.noQuiet(at(until));
}

/** What is read across it against what it read clean. */
function Pressure({ filter: f }: { filter: FilterView }) {
  if (f.kilopascals === null) return <p class="hint">{w.noPressure}</p>;
  const rise = f.cleanKilopascals === null ? null : Math.max(0, f.kilopascals - f.cleanKilopascals);
  return (
    <div class="tank">
      {rise !== null && <svg viewBox="0 0 100 8" preserveAspectRatio="none" class={f.due ? 'low' : ''} aria-hidden="true"><rect class="tank-all" width="100" height="8" /><rect class="tank-full" width={Math.min(100, 100 * rise / f.dueRiseKilopascals)} height="8" /></svg>}
      <span><b>{kPa(f.kilopascals)}</b> {w.across}, {f.cleanKilopascals === null ? w.noClean : `${w.clean(kPa(f.cleanKilopascals))}; ${(f.kind === 'strainer' ? w.emptyRise : w.rise)(fixed(rise, 0), kPa(f.dueRiseKilopascals))}`} <Age at={f.readAt} /></span>
    </div>
  );
}

/** A filter: its pressure, its newest wash, and what can be said of it. */
export function FilterLine({ filter: f, circuit, onSaid }: { filter: FilterView; circuit: string; onSaid: (text: string) => void }) {
  const [act, setAct] = useState<WashAct | null>(null);
  const strainer = f.kind === 'strainer';
  const button = (what: WashAct, text: string) => <button type="button" class="slim" data-testid={`${what.replace('/', '-')}-${circuit}-${f.id}`} onClick={() => setAct(what)}>{text}</button>;
  return (
    <li class="pump" data-testid={`filter-${circuit}-${f.id}`} data-due={f.due} data-backwash={f.backwash !== null}>
      <div class="pump-head"><b>{f.name}</b>{f.due && <span class="mark"><WarnGlyph /><b>{strainer ? w.emptyDue : w.due}</b></span>}</div>
      <Pressure filter={f} />
      <p class="hint">{f.washedAt ? <>{strainer ? w.emptied : w.washed} <Age at={f.washedAt} /> {f.washedBy && w.by(f.washedBy)}{f.washM3 !== null && `, ${w.drained(m3(f.washM3))}`}</> : strainer ? w.neverEmptied : w.never}{f.everyDays !== null && `; ${w.every(fixed(f.everyDays, 0))}`}</p>
      {f.backwash && <p class="notice" data-testid={`backwash-now-${circuit}-${f.id}`}><b>{w.under(f.backwash.by)}</b>; {quietOf(f.backwash)}</p>}
      {act ? <WashForm key={act} filter={f} circuit={circuit} act={act} onLeave={() => setAct(null)} onDone={text => { setAct(null); onSaid(text); }} />
        : <div class="inline">{f.backwash ? <>{button('washed', w.done)}{button('backwash/end', w.giveUp)}</> : strainer ? button('washed', w.noteEmptied) : <>{button('backwash', w.begin)}{button('washed', w.note)}</>}</div>}
    </li>
  );
}
