import { describe, expect, it } from 'vitest';
import type { AlarmView, CircuitView, SiteView } from '../../contract';
import { tookCircuit, tookSite } from '../../live/store';
import { wantedOf } from './wanted';

const alarm = (id: string, poolId: string | null, priority = 'high') => ({ id, poolId, priority }) as AlarmView;
const view = (id: string, alarms: AlarmView[]) => ({ id, version: 1, probes: [], pumps: [], pools: [], alarms }) as unknown as CircuitView;

describe('the alarms of a board', () => {
  it('are for one pool its own and those of what it shares, and none of another circuit', () => {
    tookSite({ circuits: [{ id: 'hall', pools: [{ id: 'main', limits: [] }, { id: 'teaching', limits: [] }], probes: [], pumps: [] }, { id: 'spa', pools: [{ id: 'spa', limits: [] }], probes: [], pumps: [] }] } as unknown as SiteView);
    tookCircuit(view('hall', [alarm('acid', 'main'), alarm('low-orp', 'teaching'), alarm('no-flow', null)]), true);
    tookCircuit(view('spa', [alarm('spa-flow', null)]), true);
    const ids = (of: string[], pool: string | null) => wantedOf({ of, atLeast: 'note' }, pool).map(a => a.id);
    expect(ids([], 'main')).toEqual(['acid', 'no-flow']);
    expect(ids(['teaching'], null)).toEqual(['low-orp', 'no-flow']);
    expect(ids([], null)).toEqual(['acid', 'low-orp', 'no-flow', 'spa-flow']);
  });
});
