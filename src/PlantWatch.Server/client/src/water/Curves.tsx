import { useEffect, useRef, useState } from 'preact/hooks';
import type { PoolInfo } from '../contract';
import type { WhatIfView } from '../contract.whatIf';
import { decimalsOfAcid, decimalsOfShare, fixed, signed } from '../format/number';
import { limitsOfPool } from '../live/store';
import { limitOf } from '../parts/beyond';
import { words } from '../words';
import { CurvePlot, type PlotKind } from './CurvePlot';
import { has, placesOf, valueAt, type CurveColumn } from './curvePoints';

export interface CurvesProps { pool: PoolInfo; answer: WhatIfView; curve: string; kilograms: number | null; choose: (curve: string) => void }

const write = (column: CurveColumn, value: number | null) => value === null ? words.whatIf.unknown
  : column === 'saturation' ? signed(value, 2) : column === 'share' ? `${fixed(value * 100, decimalsOfShare(value * 100))} %` : fixed(value, column === 'hocl' ? decimalsOfAcid(value) : 2);

const decimalsOfPlaces = (places: number[]) => [0, 1, 2].find(d => places.every(p => Math.abs(p - Number(p.toFixed(d))) < 1e-9)) ?? 3;

/** How the water answers when one thing is moved: as pictures, and in figures for who does not see them. */
export default function Curves({ pool, answer, curve, kilograms, choose }: CurvesProps) {
  const host = useRef<HTMLDivElement>(null);
  const [width, measure] = useState(0);
  useEffect(() => {
    if (!host.current) return;
    const watch = new ResizeObserver(([entry]) => measure(Math.floor(entry!.contentRect.width)));
    watch.observe(host.current);
    return () => watch.disconnect();
  }, []);
  const dose = curve !== '';
  const shown = dose ? answer.againstDose : answer.againstPh;
  const product = answer.products.find(p => p.id === curve);
  const chlorine: CurveColumn = has(shown, 'hocl') ? 'hocl' : 'share';
  const columns = ([...(dose ? ['ph'] : []), 'saturation', chlorine] as CurveColumn[]).filter(c => has(shown, c));
  const names: Record<CurveColumn, string> = { ph: words.whatIf.rows.ph, saturation: words.whatIf.rows.saturationIndex, hocl: `${words.whatIf.rows.hypochlorousAcid}, mg/L`, share: `${words.whatIf.rows.hypochlorousShare} (HOCl)` };
  const against = dose ? product?.name ?? '' : words.whatIf.againstPh;
  const limit = limitOf(limitsOfPool(pool.id), 'ph');
  const bands: Partial<Record<CurveColumn, PlotKind['band']>> = { saturation: { low: -0.5, high: 0.5 }, ph: limit && { low: limit.low, high: limit.high } };
  const then = answer.after?.figures, now = answer.now?.figures;
  const at = dose ? kilograms : then?.ph ?? null;
  const places = placesOf(shown, dose);
  return (
    <section class="sheet card curves" data-testid="curves">
      <div class="card-head"><h2>{words.whatIf.curves}</h2>
        <label class="inline"><span class="label">{words.whatIf.against}</span>
          <select class="slim" value={curve} data-testid="curve-against" onChange={e => choose(e.currentTarget.value)}>
            <option value="">{words.whatIf.againstPh}</option>{answer.products.map(p => <option key={p.id} value={p.id}>{words.whatIf.againstDose(p.name)}</option>)}
          </select></label></div>
      <div ref={host} class="curve-host">
        {columns.length === 0 && <p class="hint">{words.whatIf.noCurve}</p>}
        {width > 0 && columns.map((column, i) => {
          const first = shown[column].find(v => v !== null) ?? null, last = shown[column].findLast(v => v !== null) ?? null;
          return (
            <figure key={column} class="curve" aria-label={words.whatIf.of(names[column], against)}>
              <figcaption><b>{names[column]}</b> <span class="sr">{words.whatIf.runs(names[column], write(column, first), write(column, last), fixed(shown.at[0], 2), fixed(shown.at[shown.at.length - 1], 2))}</span></figcaption>
              <CurvePlot width={width} kind={{ column, band: bands[column], span: dose ? undefined : limit && { low: limit.low, high: limit.high }, axis: i === columns.length - 1, dose }}
                curve={shown} before={dose ? null : answer.nowAgainstPh}
                then={at !== null ? { x: at, y: valueAt(shown, column, at) } : null} now={!dose && now ? { x: now.ph, y: valueAt(answer.nowAgainstPh, column, now.ph) } : null} />
            </figure>);
        })}
      </div>
      {columns.length > 0 && <>
        <p class="hint">{words.whatIf.legend(dose)}</p>
        <table class="lines curve-table" data-testid="curve-table"><caption class="sr">{words.whatIf.table}</caption>
          <thead><tr><th scope="col">{dose ? words.whatIf.kilograms : words.whatIf.againstPh}</th>{places.map(p => <th key={p} scope="col" class="n">{fixed(p, dose ? decimalsOfPlaces(places) : 1)}</th>)}</tr></thead>
          <tbody>{columns.map(column => (
            <tr key={column}><th scope="row">{column === 'saturation' ? words.whatIf.short.saturationIndex : column === 'ph' ? words.whatIf.short.ph : words.whatIf.short.hypochlorousAcid}</th>
              {places.map(p => <td key={p}>{write(column, valueAt(shown, column, p))}</td>)}</tr>))}</tbody>
        </table></>}
    </section>
  );
}
