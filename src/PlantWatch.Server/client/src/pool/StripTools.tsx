import type { Signal } from '@preact/signals';
import { query } from '../api/http';
import { edgeMovedByDays, offsetsOf } from '../format/offset';
import { dayClock } from '../format/zone';
import { zone } from '../live/store';
import { words } from '../words';
import { days, longestCompared, type Compared } from './ghost';
import { looks, type Look } from './look';
import type { Shown } from './window';

const w = words.stripTools;

/** What is seen, as a file; drawn and written by the server. */
function Files({ poolId, shown, width, look, compared }: { poolId: string; shown: Signal<Shown>; width: number; look: Look; compared: Compared | null }) {
  const { from, to } = shown.value;
  const time = { from: new Date(from).toISOString(), to: new Date(to).toISOString() }, id = encodeURIComponent(poolId);
  const picture = query({ ...time, width: 1200, theme: 'light', look, compare: compared ?? undefined });
  return (
    <span class="files" role="group" aria-label={w.files}>{w.files}:{' '}
      <a class="line-link" href={`/api/v1/exports/pools/${id}.csv${query({ ...time, width })}`} download data-testid="export-csv">{w.csv}</a>{' '}
      <a class="line-link" href={`/api/v1/charts/pools/${id}.png${picture}`} target="_blank" rel="noopener" data-testid="export-png">{w.png}</a>{' '}
      <a class="line-link" href={`/api/v1/charts/pools/${id}.svg${picture}`} target="_blank" rel="noopener" data-testid="export-svg">{w.svg}</a></span>
  );
}

/** Which other day lies under the window, in words: the broken line has its name here. */
export function GhostLine({ compared, shown }: { compared: Compared; shown: Signal<Shown> }) {
  const { from, to } = shown.value, offset = offsetsOf(zone.value), at = (t: number) => dayClock(edgeMovedByDays(t, -days[compared], offset), zone.value);
  return <p class="hint ghost-line" data-testid="ghost-line">{to - from > longestCompared ? w.tooLong : w.ghost(w.compared[compared], at(from), at(to))}</p>;
}

export function StripTools({ poolId, shown, width, look, compared, corrected, onNote }: {
  poolId: string; shown: Signal<Shown>; width: number; look: Signal<Look>; compared: Signal<Compared | null>; corrected: boolean; onNote: () => void;
}) {
  const long = shown.value.to - shown.value.from > longestCompared;
  return (
    <div class="strips-bar strip-tools">
      {corrected && <div class="segments" role="group" aria-label={w.lines}>{looks.map(l => (
        <button key={l} type="button" class="slim" data-testid={`look-${l}`} aria-pressed={look.value === l} onClick={() => { look.value = l; }}>{w.looks[l]}</button>))}</div>}
      <label class="inline">{w.compare}
        <select class="slim" value={compared.value ?? ''} disabled={long} data-testid="compare" onChange={e => { compared.value = (e.currentTarget.value || null) as Compared | null; }}>
          <option value="">{long ? w.tooLong : w.nothing}</option>
          {(Object.keys(days) as Compared[]).map(c => <option key={c} value={c}>{w.compared[c]}</option>)}
        </select></label>
      <button type="button" class="slim" data-opens="note" data-testid="write-note" onClick={onNote}>{w.note.add}</button>
      <Files poolId={poolId} shown={shown} width={width} look={look.value} compared={compared.value} />
    </div>
  );
}
