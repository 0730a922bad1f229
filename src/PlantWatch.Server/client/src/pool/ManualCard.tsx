import type { Measurand, PoolInfo, PoolView } from '../contract';
import { decimalsOf, fixed, unitOf } from '../format/number';
import { beside } from '../format/units';
import { Age } from '../parts/Age';
import { limitsOfPool } from '../live/store';
import { besideLimit, beyond, limitOf } from '../parts/beyond';
import { ofCombined, ofTest } from '../know/tests';
import { WarnGlyph } from '../parts/Glyph';
import { Know } from '../parts/Know';
import { words } from '../words';

/** The newest result of everything that was tested by hand. */
export function ManualCard({ pool, view }: { pool: PoolInfo; view: PoolView }) {
  return <section class="sheet card later"><h2>{words.poolPage.manual}</h2><ManualTable pool={pool} view={view} /></section>;
}

export function ManualTable({ pool, view }: { pool: PoolInfo; view: PoolView }) {
  const c = view.combined, limitFor = (m: Measurand) => limitOf(limitsOfPool(pool.id), m), combinedOut = beyond(c?.value, limitFor('combined_chlorine'));
  return (
    <>
      {view.manual.length === 0 ? <p class="hint">{words.poolPage.noTests}</p> : (
        <table class="lines"><tbody>
          {view.manual.map(m => {
            const out = beyond(m.value, limitFor(m.measurand));
            const d = decimalsOf(m.measurand);
            return (
              <tr key={m.measurand}><th scope="row">{words.measurand[m.measurand]}<span class="hint block">{words.method[m.method]}</span></th>
                <td class="n">{m.censoring === 'below' ? '< ' : m.censoring === 'above' ? '> ' : ''}{besideLimit(m.value, limitFor(m.measurand), d)}{m.u > 0 && <span class="unit"> {'\u00b1'} {fixed(m.u, d)}</span>} <span class="unit">{unitOf(m.measurand)}</span>{beside(m.measurand, m.value) && <span class="hint block">{beside(m.measurand, m.value)}</span>}
                  {out && <span class="beyond block"><WarnGlyph />{out}</span>}{m.suspect && <b class="block">{words.overview.suspect}</b>}</td>
                <td><Age at={m.sampledAt} /> <Know of={words.measurand[m.measurand]} tell={() => ofTest(m)} testId={`test-${m.measurand}`} /></td></tr>);
          })}
          {c && (
            <tr><th scope="row">{words.measurand.combined_chlorine}</th><td class="n">{besideLimit(c.value, limitFor('combined_chlorine'), 2)}{c.value !== null && <span class="unit"> {c.u > 0 && `\u00b1 ${fixed(c.u, 2)}`} mg/L</span>}
              {combinedOut && <span class="beyond block"><WarnGlyph />{combinedOut}</span>}
              {c.remark && <span class="block">{c.remark.text}</span>}</td><td><Age at={c.sampledAt} /> <Know of={words.measurand.combined_chlorine} tell={() => ofCombined(c)} testId="test-combined_chlorine" /></td></tr>)}
        </tbody></table>)}
      {(view.bathers !== null || view.bottomVisible !== null) && (
        <p class="hint">{view.bathers !== null && `${words.poolPage.bathers}: ${view.bathers}. `}
          {view.bottomVisible !== null && `${words.poolPage.bottom}: ${view.bottomVisible ? words.poolPage.visible : words.poolPage.notVisible}.`}</p>)}
    </>
  );
}
