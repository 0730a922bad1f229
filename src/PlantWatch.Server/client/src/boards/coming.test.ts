import { describe, expect, it } from 'vitest';
import type { PoolInfo } from '../contract';
import { coming } from './coming';

const pool = { id: 'main', duties: [{ what: ['ph'], at: ['07:30:00', '17:00:00'] }] } as unknown as PoolInfo;
const at = (iso: string, hours: number) => coming([pool], hours, 'Europe/London', Date.parse(iso)).map(d => d.dueAt);

describe('checks that come due', () => {
  it('are those of the hours ahead, on the clock of the site', () => {
    expect(at('2026-07-01T15:30:00Z', 1)).toEqual(['2026-07-01T16:00:00.000Z']);
    expect(at('2026-12-01T15:30:00Z', 1)).toEqual([]);
  });

  it('are of tomorrow too', () => expect(at('2026-12-01T20:00:00Z', 12)).toEqual(['2026-12-02T07:30:00.000Z']));

  it('are none without hours ahead', () => expect(at('2026-12-01T16:59:30Z', 0)).toEqual([]));

  it('keep their hour on the day the clock goes back', () => expect(at('2026-10-24T18:00:00Z', 14)).toEqual(['2026-10-25T07:30:00.000Z']));
});
