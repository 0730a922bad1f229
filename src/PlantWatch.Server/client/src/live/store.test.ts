import { describe, expect, it } from 'vitest';
import type { CircuitView, SiteView } from '../contract';
import { alarms, circuits, tookCircuit, tookSite } from './store';

const view = (id: string, alarm: string) => ({ id, version: 1, probes: [], pumps: [], pools: [], alarms: [{ id: alarm }] }) as unknown as CircuitView;
const site = (...ids: string[]) => ({ name: 'x', timeZone: 'Europe/London', units: 'metric', circuits: ids.map(id => ({ id, probes: [], pumps: [], pools: [] })), products: [] }) as unknown as SiteView;

describe('what is known of the plant', () => {
  it('forgets a circuit that the plant file names no more, with its alarms', () => {
    tookCircuit(view('old', 'a'), true);
    tookCircuit(view('hall', 'b'), true);
    tookSite(site('hall'));
    expect([...circuits.value.keys()]).toEqual(['hall']);
    expect(alarms.value.map(a => a.id)).toEqual(['b']);
  });
});
