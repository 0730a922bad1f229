import { expect, test } from 'vitest';
import { address, daysOf, lastOf, missing } from './asked';

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

test('a month is one when it is typed to its end', () => {
  expect(['', '2', '-01', '2026', '2026-3', '2026-00', '2026-13', '2026-03-01'].map(daysOf)).toEqual(Array(8).fill(null));
  expect(daysOf(' 2028-02 ')).toEqual({ from: '2028-02-01', to: '2028-02-29' });
});

test('a month ends on its last day, in a leap year too', () => {
  expect([lastOf('2026-02'), lastOf('2028-02'), lastOf('2026-12')]).toEqual(['2026-02-28', '2028-02-29', '2026-12-31']);
});
