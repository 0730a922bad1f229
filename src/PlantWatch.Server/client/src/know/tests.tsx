import type { CombinedView, ManualView } from '../contract';
import { decimalsOf, fixed, unitOf } from '../format/number';
import { fullClock } from '../format/zone';
import { zone } from '../live/store';
import { Age } from '../parts/Age';
import type { Known } from '../parts/Know';
import { words } from '../words';

const w = words.know.test;
const when = (at: string) => <>{w.sampled(fullClock(at, zone.value))} <Age at={at} />.</>;
const sure = (u: number, unit: string, d: number) => (u > 0 ? w.u(`${fixed(u, d)} ${unit}`.trim()) : w.noU);

/** How the result of a test is known. */
export const ofTest = (m: ManualView): Known => ({
  from: `${w.from(words.method[m.method])}${m.censoring === 'none' ? '' : ` ${w.bound}`}`,
  age: when(m.sampledAt),
  sure: <>{sure(m.u, unitOf(m.measurand), decimalsOf(m.measurand))}{m.suspect && <b> {w.suspect}</b>}</>,
  means: words.know.means[m.measurand], source: w.source,
});

/** How combined chlorine is known: it is no test of its own. */
export const ofCombined = (c: CombinedView): Known => ({
  from: w.combined, age: when(c.sampledAt), sure: <>{sure(c.u, 'mg/L', 2)} {w.combinedU}{c.remark && <b> {c.remark.text}</b>}</>, means: words.know.means.combined_chlorine, source: w.combinedSource,
});
