import type { PoolView } from '../contract';
import { decimalsOf, fixed, signed, unitOf } from '../format/number';
import { Age } from '../parts/Age';
import { TickGlyph, WarnGlyph } from '../parts/Glyph';
import { words } from '../words';

/** The saturation index with what it was worked out from, or what keeps it from being one. */
export function BalanceCard({ view }: { view: PoolView }) {
  const { index, claim, word, inputs, missing } = view.balance;
  return (
    <section class="sheet card later" data-testid="balance">
      <h2>{words.poolPage.balance}</h2>
      <p class="index"><span class="figure">{index === null ? '\u2013' : signed(index, 2)}</span>{' '}
        {word && <span class="mark">{word === 'balanced' ? <TickGlyph /> : <WarnGlyph />}<b>{words.balance[word] ?? word}</b></span>}</p>
      {index !== null && <p class="hint">{words.overview.balance}; {words.poolPage.claim(fixed(claim, 1))}.</p>}
      {missing.length > 0 && <ul class="plain">{missing.map((m, i) => <li key={i}>{m.text}</li>)}</ul>}
      {inputs.length > 0 && <>
        <h3>{words.poolPage.inputs}</h3>
        <table class="lines"><tbody>
          {inputs.map(i => (
            <tr key={i.measurand}><th scope="row">{words.measurand[i.measurand]}</th><td class="n">{fixed(i.value, decimalsOf(i.measurand))} <span class="unit">{unitOf(i.measurand)}</span></td>
              <td>{i.live ? words.poolPage.live : <Age at={i.at} />}</td></tr>))}
        </tbody></table></>}
      {view.hoclShare !== null && <p class="hint">{words.poolPage.hocl}: <b>{fixed(view.hoclShare * 100, 0)} %</b></p>}
    </section>
  );
}
