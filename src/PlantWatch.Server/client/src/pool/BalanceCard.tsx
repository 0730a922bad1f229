import type { PoolView } from '../contract';
import { fixed, signed } from '../format/number';
import { link } from '../router';
import { IndexScale } from '../water/IndexScale';
import { ofBalance, ofShare } from '../know/balance';
import { Know } from '../parts/Know';
import { Word } from '../water/ThenNow';
import { words } from '../words';

/** The saturation index in short, or what keeps it from being one. */
export function BalanceInShort({ view }: { view: PoolView }) {
  const { index, claim, word, missing, remarks, chlorine } = view.balance;
  const share = chlorine?.share ?? view.hoclShare;
  return (
    <>
      <p class="index"><span class="figure">{index === null ? '\u2013' : signed(index, 2)}</span>{index !== null && <span class="under">{words.water.plusMinus(fixed(claim, 2))}</span>}{' '}<Word word={word} /> <Know of={words.water.verdict} tell={() => ofBalance(view.balance)} testId="balance" /></p>
      {index !== null && <IndexScale value={index} u={claim} />}
      {missing.length + remarks.length > 0 && <ul class="plain">{[...missing, ...remarks].map(m => <li key={m.text}>{m.text}</li>)}</ul>}
      {share !== null && <p class="hint">{words.poolPage.hocl}: <b>{fixed(share * 100, 0)} %</b> <Know of={words.poolPage.hocl} tell={() => ofShare(view.balance, chlorine)} testId="hocl" /></p>}
    </>
  );
}

/** The same on a sheet; the page of the balance has the rest. */
export function BalanceCard({ view }: { view: PoolView }) {
  return (
    <section class="sheet card later" data-testid="balance">
      <div class="card-head"><h2>{words.poolPage.balance}</h2><a href={link('balance', view.id)} data-testid="to-balance">{words.water.more}</a></div>
      <BalanceInShort view={view} />
    </section>
  );
}
