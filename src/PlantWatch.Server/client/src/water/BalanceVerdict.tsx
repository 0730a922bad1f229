import type { BalanceView } from '../contract.balance';
import { fixed, signed } from '../format/number';
import { words } from '../words';
import { IndexScale } from './IndexScale';
import { ofBalance } from '../know/balance';
import { Know } from '../parts/Know';
import { Word } from './ThenNow';

/** Method and inputs together, as independent: their squares add up. */
export const together = (claim: number | null, u: number | null): number | null =>
  claim === null && u === null ? null : Math.hypot(claim ?? 0, u ?? 0);

/** The index to go by, with its place on the scale and what it means; or what is missing. */
export function BalanceVerdict({ balance }: { balance: BalanceView }) {
  const main = balance.indices.find(i => i.acted && i.value !== null);
  const u = main ? together(main.claim, main.u) : null;
  return (
    <section class="sheet card verdict" data-testid="verdict">
      <h2>{words.water.verdict}</h2>
      {main ? <>
        <p class="index"><span class="figure" data-testid="verdict-index">{signed(main.value!, 2)}</span>{u !== null && <span class="under">{words.water.plusMinus(fixed(u, 2))}</span>} <Word word={main.word} /> <Know of={words.water.verdict} tell={() => ofBalance(balance)} testId="verdict" /></p>
        <IndexScale value={main.value!} u={u ?? 0} />
        {main.word && <p>{words.water.meaning[main.word]}</p>}
      </> : <p class="index"><span class="figure">{'\u2013'}</span> <span>{words.water.none}</span></p>}
      {balance.missing.length > 0 && <div class="notice" data-testid="balance-missing"><ul class="bare">{balance.missing.map(m => <li key={m.text}>{m.text}</li>)}</ul></div>}
      {balance.remarks.length > 0 && <ul class="plain hint-list" data-testid="balance-remarks">{balance.remarks.map(m => <li key={m.text}>{m.text}</li>)}</ul>}
      <p class="hint">{words.water.cadence}</p>
    </section>
  );
}
