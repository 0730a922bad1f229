import type { CombinedView } from '../contract';
import { fixed } from '../format/number';
import { words } from '../words';

/** Combined chlorine with its uncertainty, and what breaking it down would take: for understanding, never a dose. */
export function CombinedSheet({ combined }: { combined: CombinedView }) {
  const says = combined.breakpoint ?? [];
  return (
    <section class="sheet card" data-testid="combined-sheet">
      <h2>{words.measurand.combined_chlorine}</h2>
      {combined.value !== null && <p><b>{fixed(combined.value, 2)}</b> <span class="unit">{combined.u > 0 && `\u00b1\u00a0${fixed(combined.u, 2)}`} mg/L</span></p>}
      {combined.remark && <p class="hint">{combined.remark.text}</p>}
      {says.length > 0 && <details><summary>{words.methods.breakpoint}</summary><ul class="plain">{says.map(s => <li key={s.code}>{s.text}</li>)}</ul></details>}
    </section>
  );
}
