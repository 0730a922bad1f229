import type { PoolInfo } from '../contract';
import type { BalanceView } from '../contract.balance';
import { decimalsOf, fixed, unitOf } from '../format/number';
import { beside } from '../format/units';
import { Age } from '../parts/Age';
import { WarnGlyph } from '../parts/Glyph';
import { allProbes } from '../live/store';
import { link } from '../router';
import { words } from '../words';

/** What the balance is worked out from: figure, uncertainty, origin and age; what is in doubt is marked. */
export function InputTable({ pool, balance }: { pool: PoolInfo; balance: BalanceView }) {
  if (balance.inputs.length === 0) return null;
  return (
    <section class="sheet card" data-testid="balance-inputs">
      <h2>{words.water.inputs}</h2>
      <table class="lines input-table">
        <thead><tr><th scope="col">{words.water.input}</th><th scope="col" class="n">{words.water.value}</th><th scope="col">{words.water.origin}, {words.water.age}</th></tr></thead>
        <tbody>{balance.inputs.map(i => (
          <tr key={i.measurand} data-testid={'input-' + i.measurand} data-suspect={i.suspect}>
            <th scope="row">{words.measurand[i.measurand]}</th>
            <td class="n">{fixed(i.value, decimalsOf(i.measurand))} <span class="unit">{unitOf(i.measurand)}</span>{beside(i.measurand, i.value) && <span class="under block">{beside(i.measurand, i.value)}</span>}<span class="under block">{i.u === null ? words.water.noU : words.water.plusMinus(fixed(i.u, decimalsOf(i.measurand)))}</span></td>
            <td class="origin">{i.live && i.probeId ? <a href={link('probe', i.probeId)} title={allProbes.value.get(i.probeId)?.name}>{words.water.live}</a> : <a href={link('pool', pool.id)}>{words.water.test}</a>}
              <span class="block"><Age at={i.at} bare /></span>
              {i.suspect && <span class="beyond"><WarnGlyph />{words.water.doubted}</span>}</td>
          </tr>))}</tbody>
      </table>
    </section>
  );
}
