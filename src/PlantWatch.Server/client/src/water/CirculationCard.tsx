import { useState } from 'preact/hooks';
import type { CirculationView, WashWaterView } from '../contract.circulation';
import type { Amount } from '../contract.units';
import type { Measurand } from '../contract.words';
import { decimalsOf, fixed, readTyped } from '../format/number';
import { usePolled } from '../parts/usePolled';
import { words } from '../words';

const both = (a: Amount) => a.text === a.inSi ? a.text : `${a.text} (${a.inSi})`;
const level = (m: Measurand, value: number) => `${fixed(value, decimalsOf(m))}\u00a0mg/L`;
const hours = (h: number | null) => h === null ? '\u2013' : `${fixed(h, 1)}\u00a0${words.circulation.hours}`;

function Line({ name, text, under }: { name: string; text: string; under?: string }) {
  return <tr><th scope="row">{name}</th><td class="n">{text}{under && <span class="under block">{under}</span>}</td></tr>;
}

/** What went with the washes, and what that did to what fresh water thins. */
function Washes({ washes: w }: { washes: WashWaterView }) {
  const c = words.circulation;
  return (
    <details data-testid="circulation-washes"><summary>{c.washes(w.days)}: {both(w.total)}</summary>
      <p>{c.washed(w.count, `${fixed(100 * w.partReplaced, 1)}\u00a0%`)}{w.unstated > 0 && `; ${c.unstated(w.unstated)}`}.</p>
      {w.diluted.length > 0 && <ul class="plain">{w.diluted.map(d => <li key={d.measurand}><b>{words.measurand[d.measurand]}</b>: {c.thinned(level(d.measurand, d.tested), level(d.measurand, d.notBelow), both(d.drained))}</li>)}</ul>}
    </details>
  );
}

/** Only what reads as a number is asked about. */
const query = (fields: Record<string, string>) =>
  Object.entries(fields).flatMap(([k, text]) => { const t = readTyped(text); return t.kind === 'number' ? [`${k}=${t.value}`] : []; }).join('&');

/** How the circuit's water goes round: turnover, filters, mixing; and what the fresh water of a day does to it. */
export function CirculationCard({ poolId }: { poolId: string }) {
  const [asked, ask] = useState({ bathers: '', litresPerBather: '', backwashFlow: '', backwashMinutes: '' });
  const { data } = usePolled<CirculationView>(`/pools/${encodeURIComponent(poolId)}/circulation?${query(asked)}`);
  const [kept, keep] = useState<CirculationView | null>(null);
  if (data && data !== kept) keep(data);
  const view = data ?? kept;
  if (!view) return null;
  const field = (name: keyof typeof asked, label: string) => (
    <label class="field"><span class="label">{label}</span><input class="short" type="text" inputMode="decimal" autocomplete="off" value={asked[name]} data-testid={'circulation-' + name}
      onInput={e => ask({ ...asked, [name]: e.currentTarget.value })} /></label>);
  return (
    <section class="sheet card" data-testid="circulation">
      <h2>{words.circulation.title}</h2>
      <table class="lines"><tbody>
        <Line name={words.circulation.volume} text={both(view.volume)} />
        {view.turnoverHours !== null && <>
          <Line name={words.circulation.turnover} text={hours(view.turnoverHours)} />
          {view.flow && <Line name={words.circulation.flow} text={both(view.flow)} />}
          {view.filterRate && <Line name={words.circulation.rate} text={both(view.filterRate)} under={words.circulation.kinds[view.filterKind]} />}
          <Line name={words.circulation.retest} text={hours(view.retestHours)} />
          <Line name={words.circulation.even} text={hours(view.evenHours)} />
        </>}
      </tbody></table>
      <details><summary>{words.circulation.passed}</summary>
        <table class="lines"><tbody>{view.passed.map(p => <Line key={p.turnovers} name={words.circulation.after(p.turnovers)} text={`${fixed(100 * p.part, p.part > 0.99 ? 2 : 0)}\u00a0%`} />)}</tbody></table>
      </details>
      {view.washes && <Washes washes={view.washes} />}
      <details><summary>{words.circulation.ask}</summary>
        <div class="two">
          {field('bathers', words.circulation.bathers)}{field('litresPerBather', words.circulation.litres)}
          {field('backwashFlow', words.circulation.backwash)}{field('backwashMinutes', words.circulation.minutes)}
        </div>
        {view.fresh && <p data-testid="circulation-fresh"><b>{both(view.fresh.total)}</b>: {words.circulation.replaced(`${fixed(100 * view.fresh.partReplaced, 1)}\u00a0%`)}</p>}
      </details>
      {view.sayings.length > 0 && <ul class="plain">{view.sayings.map(s => <li key={s.text}>{s.text}</li>)}</ul>}
    </section>
  );
}
