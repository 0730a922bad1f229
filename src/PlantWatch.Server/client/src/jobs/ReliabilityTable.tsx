import type { ReliabilityView } from '../contract.jobs';
import { fixed } from '../format/number';
import { WarnGlyph } from '../parts/Glyph';
import { words } from '../words';

const w = words.jobs;
const days = (d: number) => fixed(d, d < 10 ? 1 : 0);

/** How often things failed, with how little that may say. Things that never failed are left out: the table is for what did. */
export function ReliabilityTable({ rows }: { rows: ReliabilityView[] }) {
  const failed = rows.filter(r => r.failures > 0);
  if (failed.length === 0) return <p class="hint">{w.none}</p>;
  return (
    <>
      <div class="scroll" tabIndex={0} role="region" aria-label={w.often}><table class="wide-table">
        <thead><tr><th scope="col">{w.thing}</th><th scope="col" class="n">{w.failures}</th><th scope="col" class="n">{w.mean}</th><th scope="col" class="n">{w.between}</th><th scope="col" class="n">{w.repair}</th></tr></thead>
        <tbody>{failed.map(r => (
          <tr key={r.asset} data-testid={`often-${r.asset}`}><th scope="row">{r.assetName}{r.repeatOffender && <span class="mark"><WarnGlyph /> {w.offender}</span>}</th>
            <td class="n">{r.failures}</td><td class="n">{r.meanDays === null ? '' : days(r.meanDays)}</td>
            <td class="n">{r.highDays === null ? w.atLeast(days(r.lowDays)) : `${days(r.lowDays)}\u2013${days(r.highDays)}`}</td><td class="n">{r.repairHours === null ? '' : fixed(r.repairHours, 1)}</td></tr>))}</tbody>
      </table></div>
      <p class="hint">{w.oftenNote}</p>
    </>
  );
}
