import type { BalanceView, IndexView } from '../contract.balance';
import { fixed, signed } from '../format/number';
import { WarnGlyph } from '../parts/Glyph';
import { words } from '../words';
import { ofIndex } from '../know/balance';
import { Know } from '../parts/Know';
import { Word } from './ThenNow';

const signless = new Set(['saturation_ph', 'ryznar', 'puckorius', 'larson_skold']);
const decimals = (i: IndexView) => i.key === 'precipitation' || i.key === 'ryznar' || i.key === 'puckorius' ? 1 : 2;
const unit = (i: IndexView) => i.key === 'precipitation' ? 'mg/L CaCO\u2083' : '';
const write = (i: IndexView) => i.value === null ? '\u2013' : signless.has(i.key) ? fixed(i.value, decimals(i)) : signed(i.value, decimals(i));

function claimOf(i: IndexView): string {
  const d = Math.max(1, decimals(i));
  if (i.value === null) return '';
  if (i.claim !== null && i.u !== null) return words.water.both(fixed(i.claim, 2), fixed(i.u, d));
  return i.claim !== null ? words.water.claimOnly(fixed(i.claim, 2)) : i.u !== null ? words.water.inputsOnly(fixed(i.u, d)) : '';
}

function Line({ index, balance }: { index: IndexView; balance: BalanceView }) {
  return (
    <div class="index-line" data-testid={'index-' + index.key}>
      <div class="index-head"><h3>{words.water.indices[index.key].name}</h3>
        <span class="index-value"><b class="figure small">{write(index)}</b> <span class="unit">{unit(index)}</span> <Know of={words.water.indices[index.key].name} tell={() => ofIndex(balance, index.key)} testId={`index-${index.key}`} /></span></div>
      {(claimOf(index) || index.word) && <div class="index-under"><span class="hint">{claimOf(index)}</span><Word word={index.word} /></div>}
      {index.sayings.map(s => <p key={s.text} class="index-said">{s.text}</p>)}
      <p class="hint">{words.water.indices[index.key].what}</p>
    </div>
  );
}

const foreign = new Set(['ryznar', 'puckorius', 'larson_skold']);

/** Every index with what it may claim. Those made for other waters stand apart; one that only lacks what all lack is not listed. */
export function IndexTable({ balance }: { balance: BalanceView }) {
  const doubted = balance.inputs.some(i => i.measurand === 'ph' && i.suspect);
  const missing = new Set(balance.missing.map(m => m.text));
  const told = balance.indices.filter(i => i.value !== null || i.sayings.some(s => !missing.has(s.text)));
  const own = told.filter(i => !foreign.has(i.key)), others = told.filter(i => foreign.has(i.key));
  return <>
    <section class="sheet card" data-testid="indices"><div class="card-head"><h2>{words.water.go}</h2>{doubted && own.length > 0 && <span class="beyond" data-testid="indices-doubted"><WarnGlyph />{words.water.onDoubtedPh}</span>}</div>{own.length > 0 ? <div>{own.map(i => <Line key={i.key} index={i} balance={balance} />)}</div> : <p class="hint">{words.water.noIndices}</p>}</section>
    {others.length > 0 && <section class="sheet card" data-testid="indices-foreign"><h2>{words.water.shown}</h2><div>{others.map(i => <Line key={i.key} index={i} balance={balance} />)}</div></section>}
  </>;
}
