import type { StopView } from '../contract.limits';
import { words } from '../words';
import { rangeText, unitWord } from './rows';

const w = words.limits;

function Edited({ stop }: { stop: StopView }) {
  if (!stop.why) return null;
  const usual = rangeText({ low: stop.usualLow, high: stop.usualHigh });
  return <span class="hint">{w.usual(usual)}. {stop.why}{stop.by && `. ${w.stopBy(stop.by)}`}</span>;
}

/** What always holds, whatever is confirmed below it. */
export function StopList({ circuit, stops }: { circuit: string; stops: StopView[] }) {
  return (
    <section class="sheet card bounds" data-testid={`stops-${circuit}`}>
      <h2>{w.stops}</h2>
      <p class="hint">{w.stopsMean}</p>
      <ul>
        {stops.map(s => <li key={s.quantity} data-testid={`stop-${s.quantity}`}><span class="bound-name">{s.name}</span> <b class="num">{rangeText(s)} {unitWord(s.unit)}</b><Edited stop={s} /></li>)}
        <li><span class="bound-name">{w.bottom}</span> <b>{w.bottomSeen}</b></li>
      </ul>
      <p class="hint">{w.stopsEdit}</p>
    </section>
  );
}
