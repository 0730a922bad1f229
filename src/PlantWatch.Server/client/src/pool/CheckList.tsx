import { useState } from 'preact/hooks';
import type { CheckAnswer, ManualCheck } from '../contract';
import { decimalsOf, fixed } from '../format/number';
import { dayClock } from '../format/zone';
import { allProbes, zone } from '../live/store';
import { JudgementCard } from '../check/AnswerView';
import { words } from '../words';

const sign = { none: '', below: '< ', above: '> ' } as const;

function line(check: ManualCheck): string {
  return check.results.map(r => `${words.measurand[r.measurand]} ${sign[r.censoring]}${fixed(r.value, decimalsOf(r.measurand))}`).join(', ');
}

/** The checks, newest first; each opens to what it said of the probes. */
export function CheckList({ checks, failed }: { checks: CheckAnswer[] | null; failed: boolean }) {
  const [shown, show] = useState(9);
  return (
    <section class="sheet card later" data-testid="checks">
      <h2>{words.poolPage.checks}</h2>
      {checks === null ? <p class="hint">{failed ? words.error.unreachable : words.loading}</p> : checks.length === 0 ? <p class="hint">{words.poolPage.noChecks}</p> : (
        <ul class="check-list">
          {checks.slice(0, shown).map(({ check, combined, judgements, remarks }) => (
            <li key={check.id}><details>
              <summary><b>{dayClock(check.sampledAt, zone.value)}</b> {check.who} <span class="hint block">{line(check)}{combined?.value != null && `, ${words.measurand.combined_chlorine} ${fixed(combined.value, 2)}`}</span></summary>
              <p class="hint">{words.point[check.point]}{check.place && `, ${check.place}`}
                {check.panel.map(p => `; ${words.poolPage.panel}: ${allProbes.value.get(p.probeId)?.name ?? p.probeId} ${fixed(p.value, allProbes.value.get(p.probeId)?.decimals ?? 2)}`).join('')}
                {check.bathers !== null && `; ${words.poolPage.bathers}: ${check.bathers}`}</p>
              {check.note && <p>{check.note}</p>}
              {remarks.map((r, i) => <p key={i}><b>{r.text}</b></p>)}
              <ul class="judgements">{judgements.map(j => <JudgementCard key={j.probeId} j={j} testId={false} />)}</ul>
            </details></li>))}
        </ul>)}
      {checks !== null && checks.length > shown && <button type="button" onClick={() => show(n => n + 40)}>{words.probe.olderChecks(checks.length - shown)}</button>}
    </section>
  );
}
