import { useState } from 'preact/hooks';
import type { FiltersView } from '../contract.filter';
import { fixed } from '../format/number';
import { Age } from '../parts/Age';
import { WarnGlyph } from '../parts/Glyph';
import { usePolled } from '../parts/usePolled';
import { words } from '../words';
import { FilterLine } from './FilterLine';

const w = words.filters;
const flow = (value: number) => `${fixed(value, 0)}\u00a0m\u00b3/h`;

function Flow({ view: v }: { view: FiltersView }) {
  if (v.flowCubicMetresPerHour === null) return <p class="hint">{w.flow}: {w.noFlow}</p>;
  const low = v.lowCubicMetresPerHour !== null && v.flowCubicMetresPerHour < v.lowCubicMetresPerHour;
  return <p data-testid={`circulation-${v.circuitId}`} data-low={low}>{low && <WarnGlyph />} {w.flow} <b>{flow(v.flowCubicMetresPerHour)}</b>{low && <b> {w.isLow}</b>}{v.lowCubicMetresPerHour !== null && `, ${w.low(flow(v.lowCubicMetresPerHour))}`} <Age at={v.flowAt} /></p>;
}

const hours = (value: number) => `${fixed(value, 1)}\u00a0h`;

/** How long a turnover takes, what it was designed for, and where the filters say that the difference is lost. */
function Turnover({ view: { circuitId, turnover: t, says } }: { view: FiltersView }) {
  if (t.designHours === null || t.designCubicMetresPerHour === null) return null;
  return (
    <>
      <p data-testid={`turnover-${circuitId}`} data-short={t.fallsShort}>{t.fallsShort && <WarnGlyph />} {w.turnover} {t.hours === null || t.meanCubicMetresPerHour === null ? w.noHour : <b>{w.takes(hours(t.hours), flow(t.meanCubicMetresPerHour))}</b>}{t.fallsShort && <b> {w.short}</b>}, {w.design(hours(t.designHours), flow(t.designCubicMetresPerHour))}
        {t.rate !== null && <>; {w.rate(`${fixed(t.rate, 1)}\u00a0m/h`)}{words.circulation.kinds[t.rateKind] && ` (${words.circulation.kinds[t.rateKind]})`}</>}</p>
      {says.length > 0 && <ul class="plain" data-testid={`turnover-says-${circuitId}`}>{says.map(s => <li key={s.text}>{s.text}</li>)}</ul>}
    </>
  );
}

/** Circulation and filters of every circuit that has them. */
export function FiltersCard() {
  const { data, reload } = usePolled<FiltersView[]>('/filters', 10_000);
  const [said, say] = useState('');
  if (!data || data.length === 0) return null;
  return (
    <div class="sheet card" data-testid="filters"><h2>{w.title}</h2>
      <p role="status" class={said ? 'notice' : 'sr'} data-testid="filters-said">{said}</p>
      {data.map(v => (
        <section key={v.circuitId}><h3>{v.name}</h3><Flow view={v} /><Turnover view={v} />
          <ul class="pump-list">{v.filters.map(f => <FilterLine key={f.id} filter={f} circuit={v.circuitId} onSaid={text => { say(text); reload(); }} />)}</ul>
        </section>))}
    </div>
  );
}
