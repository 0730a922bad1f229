import type { FiguresView, WaterFigures } from '../contract.whatIf';
import { decimalsOfAcid, decimalsOfShare, fixed, signed } from '../format/number';
import { TickGlyph, WarnGlyph } from '../parts/Glyph';
import { words } from '../words';

type Key = keyof WaterFigures;
interface Row { key: Key; decimals: number; unit: string; times?: number; sign?: boolean }

const rows: Row[] = [
  { key: 'ph', decimals: 2, unit: '' },
  { key: 'saturationIndex', decimals: 2, unit: '', sign: true },
  { key: 'hypochlorousAcid', decimals: 2, unit: 'mg/L' },
  { key: 'hypochlorousShare', decimals: 0, unit: '%', times: 100 },
  { key: 'freeChlorine', decimals: 2, unit: 'mg/L' },
  { key: 'totalAlkalinity', decimals: 0, unit: 'mg/L' },
  { key: 'calciumHardness', decimals: 0, unit: 'mg/L' },
  { key: 'dissolvedSolids', decimals: 0, unit: 'mg/L' },
  { key: 'cyanurate', decimals: 0, unit: 'mg/L' },
];

const valueOf = (view: FiguresView | null, row: Row): number | null => {
  const value = view?.figures[row.key];
  return value === null || value === undefined ? null : value * (row.times ?? 1);
};
const decimalsOf = (row: Row, value: number | null) => row.key === 'hypochlorousAcid' ? decimalsOfAcid(value) : row.key === 'hypochlorousShare' ? decimalsOfShare(value) : row.decimals;
const write = (value: number | null, row: Row) => value === null ? words.whatIf.unknown : row.sign ? signed(value, row.decimals) : fixed(value, decimalsOf(row, value));

function Change({ from, to, row }: { from: number | null; to: number | null; row: Row }) {
  if (from === null || to === null) return <>{words.whatIf.unknown}</>;
  const text = signed(to - from, decimalsOf(row, Math.max(from, to)));
  return Number(text.replace('\u2212', '-')) === 0 ? <span class="hint">{words.whatIf.same}</span> : <b>{text}</b>;
}

export const Word = ({ word }: { word: string | null }) => word
  ? <span class="mark water-word">{word === 'balanced' ? <TickGlyph /> : <WarnGlyph />}{words.balance[word] ?? word}</span> : null;

/** Now, what if, and the difference, figure by figure. */
export function ThenNow({ now, then }: { now: FiguresView | null; then: FiguresView | null }) {
  const shown = rows.filter(r => !(r.key === 'cyanurate' && !valueOf(now, r) && !valueOf(then, r)));
  return (
    <table class="lines then-now" data-testid="then-now">
      <thead><tr><th scope="col"><span class="sr">{words.poolPage.measurand}</span></th><th scope="col" class="n">{words.whatIf.now}</th><th scope="col" class="n">{words.whatIf.then}</th><th scope="col" class="n">{words.whatIf.change}</th></tr></thead>
      <tbody>{shown.map(row => {
        const from = valueOf(now, row), to = valueOf(then, row);
        return (
          <tr key={row.key} data-testid={'row-' + row.key}>
            <th scope="row">{words.whatIf.rows[row.key]} {row.unit && <span class="unit">{row.unit}</span>}</th>
            <td data-testid={`now-${row.key}`}>{write(from, row)}</td><td class="n" data-testid={`then-${row.key}`}>{write(to, row)}</td><td><Change from={from} to={to} row={row} /></td>
          </tr>);
      })}
      <tr class="word-row"><th scope="row"><span class="sr">{words.whatIf.rows.saturationIndex}</span></th><td colSpan={3}><Word word={then?.word ?? null} /></td></tr></tbody>
    </table>
  );
}

/** The three figures that matter, always in sight on a phone. */
export function ShortThen({ now, then }: { now: FiguresView | null; then: FiguresView | null }) {
  const share = then?.figures.hypochlorousAcid === null;
  const shown = rows.filter(r => r.key === 'ph' || r.key === 'saturationIndex' || r.key === (share ? 'hypochlorousShare' : 'hypochlorousAcid'));
  return (
    <dl class="short-then" aria-hidden="true">{shown.map(row => (
      <div key={row.key}><dt>{words.whatIf.short[row.key as keyof typeof words.whatIf.short]}</dt>
        <dd><b>{write(valueOf(then, row), row)}</b> <span class="unit">{row.unit}</span><span class="hint">{words.whatIf.present(write(valueOf(now, row), row))}</span></dd></div>))}</dl>
  );
}
