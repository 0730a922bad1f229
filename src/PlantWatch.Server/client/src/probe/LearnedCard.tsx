import type { LearnedView } from '../contract.probe';
import { fixed } from '../format/number';
import { fullClock } from '../format/zone';
import { zone } from '../live/store';
import { words } from '../words';

/** What this pool's own ORP line has learned, and that it is silent until that is enough. */
export function LearnedCard({ learned }: { learned: LearnedView }) {
  const w = words.probePage.learned, known = learned.level !== null;
  return (
    <section class="sheet card later" data-testid="learned" data-known={known}>
      <h2>{w.title}</h2>
      <p>{known ? w.speaks : w.silent}</p>
      <table class="lines"><tbody>
        <tr><th scope="row">{w.checks}</th><td class="n" data-testid="learned-checks">{w.of(learned.checks, learned.needed)}</td></tr>
        <tr><th scope="row">{w.days}</th><td class="n">{w.ofDays(fixed(learned.days, 1), fixed(learned.daysNeeded, 0))}</td></tr>
        {known && learned.at !== null && <tr><th scope="row">{w.level(fixed(learned.at, 2))}</th><td class="n">{fixed(learned.level!.value, 0)} {'\u00b1'} {fixed(learned.level!.u, 0)} <span class="unit">mV</span></td></tr>}
        {learned.slope && <tr><th scope="row">{w.slope}</th><td class="n">{fixed(learned.slope.value, 0)} {'\u00b1'} {fixed(learned.slope.u, 0)} <span class="unit">mV</span></td></tr>}
      </tbody></table>
      {learned.since && <p class="hint" data-testid="learned-since">{w.since(fullClock(learned.since, zone.value))}</p>}
      <p class="hint">{w.own}</p>
    </section>
  );
}
