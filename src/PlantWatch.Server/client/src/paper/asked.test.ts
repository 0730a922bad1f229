import { expect, test } from 'vitest';
import { address, lastOf, missing } from './asked';

const w = { needName: 'name', needPool: 'pool', needDay: 'day', order: 'order' };
const asked = { kind: 'day-log', pools: ['main', 'a b'], from: '2026-03-01', to: '', by: ' R. Castellan ' };

test('a sheet is asked for by its days, its pools and a name', () => {
  expect(address(asked, 'pdf')).toBe('/api/v1/sheets/day-log.pdf?from=2026-03-01&by=R.+Castellan&pool=main&pool=a%20b');
  expect(missing(asked, w)).toEqual({});
});

test('what is missing is said beside its field', () => {
  expect(missing({ ...asked, pools: [], from: '', by: ' ' }, w)).toEqual({ pools: 'pool', from: 'day', by: 'name' });
  expect(missing({ ...asked, to: '2026-02-28' }, w)).toEqual({ to: 'order' });
});

test('a month ends on its last day, in a leap year too', () => {
  expect([lastOf('2026-02'), lastOf('2028-02'), lastOf('2026-12')]).toEqual(['2026-02-28', '2028-02-29', '2026-12-31']);
});
