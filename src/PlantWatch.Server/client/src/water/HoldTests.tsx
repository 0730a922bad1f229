import type { ClockView } from '../contract.incident';
import { fixed } from '../format/number';
import { clock as timeOf } from '../format/zone';
import { zone } from '../live/store';
import { words } from '../words';
import { amount, placeOf } from './incident';

const w = words.incident;

/** Every test since it happened: which stand in the count, and why the others do not. Newest first. */
export function HoldTests({ clock }: { clock: ClockView }) {
  const t = w.table;
  return (
    <section class="sheet card tests-card">
      <h2>{w.tests}</h2>
      {clock.tests.length === 0 ? <p class="hint">{w.noTests}</p> : (
        <div class="scroll"><table class="lines hold-tests" data-testid="hold-tests">
          <thead><tr><th scope="col">{t.at}</th><th scope="col">{t.place}</th><th scope="col" class="n">{t.residual}</th><th scope="col" class="n">{t.ph}</th><th scope="col" class="n">{t.celsius}</th><th scope="col" class="n">{t.gained}</th></tr></thead>
          {[...clock.tests].reverse().map(test => (
            <tbody key={test.checkId} class={test.counts ? 'counts' : 'idle'} data-testid="hold-test" data-counts={test.counts}>
              <tr><th scope="row">{timeOf(test.at, zone.value)}</th><td class="place"><span class="tick" aria-hidden="true">{test.counts ? '\u25c6' : '\u25c7'}</span>{placeOf(test)}</td>
                <td class="n">{fixed(test.residual, 1)}</td><td class="n">{fixed(test.ph, 2)}</td><td class="n">{fixed(test.celsius, 1)}</td>
                <td class="n">{test.gained > 0 && clock.row ? '+' + amount(clock.row, test.gained) : test.counts ? w.counts : '\u2013'}</td></tr>
              {test.why.length > 0 && <tr class="why-not"><td colSpan={6}>{test.why.map(said => said.text).join('. ')}</td></tr>}
            </tbody>))}
        </table></div>)}
    </section>
  );
}
