import { describe, expect, it } from 'vitest';
import type { NoteView } from '../contract.notes';
import { laid, painted } from './notes';

const note = (id: string, from: string, more: Partial<NoteView> = {}): NoteView => ({ id, poolId: 'main', from, to: from, text: id, by: 'R', saidAt: from, why: null, retracted: false, before: [], ...more });
const item = (id: string, poolId: string, refusal: object | null = null, corrects: string | null = null) => ({ id, madeAt: 0, refusal, request: { poolId, from: '2026-05-04T09:00:00Z', to: '2026-05-04T09:30:00Z', text: id, by: 'R', corrects, why: null, retracted: false } }) as never;

describe('the notes over the strips', () => {
  it('are those of the record and of this device, oldest first, each with how it stands', () =>
    expect(laid([note('b', '2026-05-04T10:00:00Z', { retracted: true }), note('a', '2026-05-04T08:00:00Z', { before: [note('x', '2026-05-04T08:00:00Z')] })], [item('w', 'main'), item('r', 'main', {}), item('o', 'other')], 'main').map(n => [n.id, n.state]))
      .toEqual([['a', 'corrected'], ['w', 'waiting'], ['r', 'refused'], ['b', 'retracted']]));
  it('stand once when the server has taken one that still lies here', () => expect(laid([note('w', '2026-05-04T10:00:00Z')], [item('w', 'main')], 'main')).toHaveLength(1));
  it('stand where they correct one, while they wait and not when they were refused', () => {
    const old = note('a', '2026-05-04T08:00:00Z');
    expect(laid([old], [item('w', 'main', null, 'a')], 'main').map(n => n.id)).toEqual(['w']);
    expect(laid([old], [item('r', 'main', {}, 'a')], 'main').map(n => n.id)).toEqual(['a', 'r']);
  });
  it('are not painted over the strips when they were taken back', () => expect(painted(laid([note('b', '2026-05-04T10:00:00Z', { retracted: true }), note('a', '2026-05-04T08:00:00Z')], [], 'main'))).toHaveLength(1));
});
