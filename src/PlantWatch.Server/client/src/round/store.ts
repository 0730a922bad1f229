import { signal } from '@preact/signals';
import { recallJson, remember } from '../api/kept';
import type { Draft, Row } from '../check/draft';
import { methodsOf, rowOf } from '../check/draft';
import type { Measurand } from '../contract';
import { serverNow } from '../live/clock';
import type { Round, Screen, Stop } from './round';

/** The round under way; on the device, so that it stands where it was left after a rescue, a flat battery or a shift. */
export const round = signal<Round | null>(recallJson<Round>('round'));

/** The browser would not keep the last change: it lives only as long as this page. */
export const unkept = signal(false);

export function setRound(next: Round | null): void {
  round.value = next;
  unkept.value = !remember('round', next === null ? null : JSON.stringify(next));
}

// Two tabs of one device show one round.
addEventListener('storage', e => { if (e.key === 'plantwatch.round') round.value = recallJson<Round>('round'); });

export const stopOf = (r: Round): Stop => r.stops[r.at]!;

export function editStop(change: (stop: Stop) => Stop): void {
  const r = round.value;
  if (r) setRound({ ...r, stops: r.stops.map((s, i) => (i === r.at ? change(s) : s)) });
}

export const editDraft = (change: Partial<Draft>) => editStop(s => ({ ...s, draft: { ...s.draft, ...change } }));

export function editRow(m: Measurand, change: Partial<Row>): void {
  if (change.method) remember('method.' + m, change.method);
  editStop(s => {
    const readAt = { ...s.readAt };
    // The moment of the first figure is the moment of reading; emptied, it has not been read.
    if (change.text !== undefined) { if (change.text === '') delete readAt[m]; else readAt[m] ??= serverNow(); }
    return { ...s, readAt, left: s.left.filter(x => x !== m), draft: { ...s.draft, rows: { ...s.draft.rows, [m]: { ...rowOf(s.draft, m), ...change } } } };
  });
}

export function show(screen: Screen, mending = false): void {
  if (round.value) setRound({ ...round.value, screen, mending });
  scrollTo(0, 0);
}

export { methodsOf, rowOf };
