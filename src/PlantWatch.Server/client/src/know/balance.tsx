import type { BalanceInput, BalanceView, ChlorineView, IndexKey } from '../contract.balance';
import { decimalsOf, fixed } from '../format/number';
import { Age } from '../parts/Age';
import type { Known } from '../parts/Know';
import { words } from '../words';

const w = words.know.balance;

/** What went in, each with where it is from; the oldest tells how old the whole is. */
function inputs(list: readonly BalanceInput[]) {
  return <ul class="plain">{list.map(i => <li key={i.measurand}>{words.measurand[i.measurand]} {fixed(i.value, decimalsOf(i.measurand))}{i.u !== null && ` \u00b1 ${fixed(i.u, decimalsOf(i.measurand))}`}, {i.live ? words.water.live : words.water.test}, <Age at={i.at} />{i.suspect && <b>, {words.water.doubted}</b>}</li>)}</ul>;
}
const oldest = (list: readonly BalanceInput[]) => list.map(i => i.at).sort()[0];

/** How an index is known: its inputs, what the method may claim, and its source. */
export function ofIndex(balance: BalanceView, key: IndexKey): Known {
  const index = balance.indices.find(i => i.key === key), first = oldest(balance.inputs);
  return {
    from: balance.inputs.length > 0 ? <>{w.from} {inputs(balance.inputs)}</> : w.nothing,
    age: first ? <>{w.oldest} <Age at={first} />. {words.water.cadence}</> : undefined,
    sure: index?.claim != null || index?.u != null ? `${index.claim != null && index.u != null ? words.water.both(fixed(index.claim, 2), fixed(index.u, 2)) : index.claim != null ? words.water.claimOnly(fixed(index.claim, 2)) : words.water.inputsOnly(fixed(index.u, 2))}. ${w.k2}` : words.water.noU,
    means: <>{words.water.indices[key].what}{index?.acted === false && ` ${w.notActed}`}</>, source: w.sources[key],
  };
}

/** The index that is acted on, wherever it stands. */
export const ofBalance = (balance: BalanceView): Known => ofIndex(balance, balance.indices.find(i => i.acted && i.value !== null)?.key ?? 'speciated');

/** How much of the free chlorine is hypochlorous acid. */
export function ofShare(balance: BalanceView, chlorine: ChlorineView | null): Known {
  const used = balance.inputs.filter(i => ['ph', 'temperature', 'free_chlorine', 'cyanuric_acid', 'dissolved_solids'].includes(i.measurand)), first = oldest(used);
  return {
    from: <>{w.share} {inputs(used)}</>, age: first ? <>{w.oldest} <Age at={first} />.</> : undefined,
    sure: chlorine?.u != null ? `\u00b1 ${fixed(chlorine.u, 2)} mg/L. ${w.k2}` : w.shareU, means: w.shareMeans, source: (chlorine?.cyanurate ?? 0) > 0 ? w.cyanurateSource : w.shareSource,
  };
}
