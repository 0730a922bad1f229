import { useComputed, type Signal } from '@preact/signals';
import { dayClock, fullClock } from '../format/zone';
import { serverNow } from '../live/clock';
import { zone } from '../live/store';
import { words } from '../words';
import { following, panned, spans, zoomed, type Shown, type SpanName } from './window';

/** Which time is shown: spans by name, a step earlier or later, closer or wider, and now. */
export function StripsBar({ shown, cursor }: { shown: Signal<Shown>; cursor: Signal<number | null> }) {
  const w = shown.value, span = w.to - w.from;
  const text = useComputed(() => {
    const s = shown.value;
    return cursor.value !== null ? dayClock(cursor.value, zone.value) : `${fullClock(s.from, zone.value)} \u2013 ${s.follow ? words.strips.now : fullClock(s.to, zone.value)}`;
  });
  const set = (next: Shown) => { shown.value = next; };
  return (
    <div class="strips-bar">
      <div class="segments" role="group" aria-label={words.strips.range}>
        {(Object.keys(spans) as SpanName[]).map(k => (
          <button key={k} type="button" class="slim" data-testid={`range-${k}`} aria-pressed={Math.abs(span - spans[k]) < spans[k] * 0.01} onClick={() => set(following(spans[k], serverNow()))}>
            {words.strips.spans[k]}</button>))}
      </div>
      <div class="segments">
        <button type="button" class="slim" aria-label={words.strips.earlier} onClick={() => set(panned(w, -0.5, serverNow()))}>{'\u2039'}</button>
        <button type="button" class="slim" aria-label={words.strips.later} disabled={w.follow} onClick={() => set(panned(w, 0.5, serverNow()))}>{'\u203a'}</button>
        <button type="button" class="slim" aria-label={words.strips.closer} onClick={() => set(zoomed(w, 2, 0.5, serverNow()))}>+</button>
        <button type="button" class="slim" aria-label={words.strips.wider} onClick={() => set(zoomed(w, 0.5, 0.5, serverNow()))}>{'\u2212'}</button>
        <button type="button" class="slim" data-testid="range-now" aria-pressed={w.follow} onClick={() => set(following(span, serverNow()))}>{words.strips.now}</button>
      </div>
      <span class="strips-time" data-testid="strips-time">{text.value}</span>
    </div>
  );
}
