import type { Said } from '../contract';
import type { DoseAdviceView, DoseFigures, DoseView } from '../contract.dose';
import { fixed, signed } from '../format/number';
import { clock } from '../format/zone';
import { zone } from '../live/store';
import { Age } from '../parts/Age';
import { WarnGlyph } from '../parts/Glyph';
import { Know } from '../parts/Know';
import { words } from '../words';

const w = words.dose;

/** What may be added, how much of it in one go, and everything that has to be known first; or why there is no dose. */
export function DoseAdvice({ advice, waiting, failed }: { advice: DoseAdviceView | null; waiting: boolean; failed: boolean }) {
  if (failed) return <section class="sheet card"><p class="notice" role="alert" data-testid="dose-unreachable">{w.unreachable}</p></section>;
  if (!advice) return <section class="sheet card"><p class="hint" data-testid="dose-waiting">{waiting ? w.working : w.waiting}</p></section>;
  return (
    <section class="sheet card dose-advice" aria-live="polite">
      {advice.dose ? <Amounts advice={advice} dose={advice.dose} /> : <Refused advice={advice} />}
      <List title={w.says} said={[...advice.product.says, ...advice.says.filter(s => !advice.product.says.some(p => p.text === s.text))]} />
      {advice.dose && <>
        <List title={w.equipment} said={advice.equipment} testid="dose-equipment" />
        <List title={w.precautions} said={advice.precautions} testid="dose-precautions" />
        <List title={w.how} said={advice.how} testid="dose-how" />
        <After dose={advice.dose} />
        <List title={w.side} said={advice.dose.sideEffects} />
      </>}
    </section>
  );
}

function Refused({ advice }: { advice: DoseAdviceView }) {
  return (
    <div data-testid="dose-refused">
      <h2 class="mark"><WarnGlyph />{w.refusedTitle}</h2>
      <ul class="plain">{advice.refused.map(r => <li key={r.code + r.text} data-code={r.code}>{r.text}</li>)}</ul>
    </div>
  );
}

function Amounts({ advice, dose }: { advice: DoseAdviceView; dose: DoseView }) {
  const { product } = advice;
  const said = (mass: { text: string; inSi: string }, volume: { text: string; inSi: string } | null) => volume ?? mass;
  const first = said(dose.first, dose.firstVolume), total = said(dose.total, dose.totalVolume);
  const at = new Date(Date.parse(advice.at) + advice.retestHours * 3_600_000).toISOString();
  return (
    <>
      <div class="card-head"><h2>{product.name}: {dose.whole ? w.allAtOnce : w.firstGo}</h2><Know of={product.name} tell={() => ({ ...words.know.dose, age: <Age at={advice.at} />, sure: words.know.dose.sure(fixed(dose.uncertaintyPercent, 0)) })} testId="dose" /></div>
      <p class="dose-amount"><b class="figure" data-testid="dose-first">{first.text}</b>{first.inSi !== first.text && <span class="unit"> ({first.inSi})</span>}
        {dose.firstVolume && <span class="hint"> {w.also} {dose.first.text}</span>}</p>
      {!dose.whole && <p data-testid="dose-total">{w.of(total.text)}</p>}
      {dose.because.length > 0 && <ul class="plain" data-testid="dose-because" aria-label={w.why}>{dose.because.map(b => <li key={b.code + b.text}>{b.text}</li>)}</ul>}
      <dl class="dose-facts">
        <div><dt>{w.strength}</dt><dd data-testid="dose-strength">{w.strengthOf(fixed(product.strengthPercent, 1), product.asChlorine)} <span class="hint">{product.ageDays === null ? w.ageUnknown : w.age(product.ageDays)}</span></dd></div>
        <div><dt>{w.water}</dt><dd>{advice.volume.text}{advice.firstVolume.value < advice.volume.value && <span class="hint"> {w.firstWater(advice.firstVolume.text)}</span>}</dd></div>
        <div><dt>{w.retest}</dt><dd data-testid="dose-retest">{w.retestAt(fixed(advice.retestHours, advice.retestHours % 1 ? 1 : 0), clock(at, zone.value))}</dd></div>
      </dl>
      <p class="hint">{w.u(fixed(dose.uncertaintyPercent, 0))}{dose.cost !== null && <>. {w.cost(fixed(dose.cost, 2))}</>}</p>
    </>
  );
}

function List({ title, said, testid }: { title: string; said: Said[]; testid?: string }) {
  if (said.length === 0) return null;
  return <div class="dose-list" data-testid={testid}><h3>{title}</h3><ul class="plain">{said.map(s => <li key={s.code + s.text}>{s.text}</li>)}</ul></div>;
}

const rows: { key: keyof DoseFigures; decimals: number; unit: string; sign?: boolean }[] = [
  { key: 'ph', decimals: 2, unit: '' }, { key: 'saturation', decimals: 2, unit: '', sign: true }, { key: 'freeChlorine', decimals: 2, unit: 'mg/L' },
  { key: 'hypochlorousAcid', decimals: 2, unit: 'mg/L' }, { key: 'alkalinity', decimals: 0, unit: 'mg/L' }, { key: 'calcium', decimals: 0, unit: 'mg/L' },
  { key: 'cyanurate', decimals: 0, unit: 'mg/L' }, { key: 'solids', decimals: 0, unit: 'mg/L' },
];

function After({ dose }: { dose: DoseView }) {
  const { before, atOnce, spent } = dose;
  if (!before || !atOnce) return null;
  const write = (f: DoseFigures, r: (typeof rows)[number]) => { const v = f[r.key]; return v === null ? '\u2013' : r.sign ? signed(v, r.decimals) : fixed(v, r.decimals); };
  return (
    <div>
      <h3>{w.after}</h3>
      <table class="lines then-now" data-testid="dose-after">
        <thead><tr><th scope="col"><span class="sr">{words.poolPage.measurand}</span></th><th scope="col" class="n">{w.nowColumn}</th><th scope="col" class="n">{w.atOnce}</th>{spent && <th scope="col" class="n">{w.spent}</th>}</tr></thead>
        <tbody>{rows.filter(r => r.key !== 'cyanurate' || before.cyanurate > 0 || atOnce.cyanurate > 0).map(r => (
          <tr key={r.key} data-testid={'after-' + r.key}><th scope="row">{w.rows[r.key]} {r.unit && <span class="unit">{r.unit}</span>}</th>
            <td class="n">{write(before, r)}</td><td class="n"><b>{write(atOnce, r)}</b></td>{spent && <td class="n">{write(spent, r)}</td>}</tr>))}</tbody>
      </table>
      <p class="hint">{w.closedModel}</p>
    </div>
  );
}
