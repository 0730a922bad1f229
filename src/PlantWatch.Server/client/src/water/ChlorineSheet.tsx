import type { BalanceInput, ChlorineView } from '../contract.balance';
import { decimalsOfAcid, decimalsOfShare, fixed } from '../format/number';
import { Age } from '../parts/Age';
import { ofShare } from '../know/balance';
import { Know } from '../parts/Know';
import type { BalanceView } from '../contract.balance';
import { words } from '../words';

function Line({ name, hocl, u, share, testId }: { name: string; hocl: number | null; u: number | null; share: number | null; testId: string }) {
  return (
    <tr data-testid={testId}><th scope="row">{name}</th>
      <td class="n">{hocl === null ? '\u2013' : fixed(hocl, decimalsOfAcid(hocl))} <span class="unit">mg/L</span>{u !== null && <span class="under block">{words.water.plusMinus(fixed(u, decimalsOfAcid(hocl)))}</span>}</td>
      <td>{share === null ? '\u2013' : `${fixed(share * 100, decimalsOfShare(share * 100))} %`}</td></tr>
  );
}

/** How much of the free chlorine disinfects, with the cyanurate there is and as it would be without. */
export function ChlorineSheet({ chlorine, balance }: { chlorine: ChlorineView; balance: BalanceView }) {
  const inputs: BalanceInput[] = balance.inputs;
  const free = inputs.find(i => i.measurand === 'free_chlorine');
  const stabilised = (chlorine.cyanurate ?? 0) > 0;
  return (
    <section class="sheet card" data-testid="chlorine">
      <div class="card-head"><h2>{words.water.chlorine}</h2><Know of={words.water.hocl} tell={() => ofShare(balance, chlorine)} testId="chlorine" /></div>
      {chlorine.share !== null && <table class="lines chlorine-table"><thead><tr><th scope="col"><span class="sr">{words.poolPage.measurand}</span></th><th scope="col" class="n">{words.water.hocl}</th><th scope="col" class="n">{words.water.share}</th></tr></thead>
        <tbody>
          <Line name={stabilised ? words.water.withCyanurate(fixed(chlorine.cyanurate, 0)) : words.water.asItIs} hocl={chlorine.hocl} u={chlorine.u} share={chlorine.share} testId="hocl" />
          {stabilised && <Line name={words.water.without} hocl={chlorine.hoclWithout} u={null} share={chlorine.shareWithout} testId="hocl-without" />}
        </tbody></table>}
      {free && <p class="hint">{words.water.chlorineFrom(free.live ? words.water.live : words.water.test)}<Age at={free.at} />{free.suspect && <b>, {words.water.doubted}</b>}.</p>}
      {chlorine.sayings.length > 0 && <ul class="plain">{chlorine.sayings.map(s => <li key={s.text}>{s.text}</li>)}</ul>}
    </section>
  );
}
