import { describe, expect, it } from 'vitest';
import { build, errorsOf } from './build';
import { draftOf, emptyDraft, type Draft, type Row } from './draft';
import { siteUnits } from '../format/units';

const now = Date.parse('2026-03-03T07:31:20.500Z');
const row = (text: string, more: Partial<Row> = {}): Row => ({ text, bound: 'none', method: 'photometer', dilution: '', ...more });
const of = (change: Partial<Draft>): Draft => ({ ...emptyDraft('main'), ...change });

describe('a check', () => {
  it('reads commas, dilutions and bounds', () => {
    const { request, errors } = build(of({
      rows: { free_chlorine: row('1,1', { dilution: '10' }), total_chlorine: row('6', { bound: 'above' }), ph: row('7,42') }, panel: { 'main-ph': '7,6' }, bathers: '12', bottom: 'no',
    }), ' R. Hale ', 'Europe/London', now);
    expect(errors).toEqual({});
    expect(request.who).toBe('R. Hale');
    expect(request.results).toEqual([
      { measurand: 'free_chlorine', value: 11, method: 'photometer', censoring: 'none', dilution: 10 },
      { measurand: 'total_chlorine', value: 6, method: 'photometer', censoring: 'above', dilution: 1 },
      { measurand: 'ph', value: 7.42, method: 'photometer', censoring: 'none', dilution: 1 },
    ]);
    expect(request.panel).toEqual([{ probeId: 'main-ph', value: 7.6 }]);
    expect([request.bottomVisible, request.bathers, request.sampledAt]).toEqual([false, 12, '2026-03-03T07:31:20.500Z']);
  });

  it('takes the sample time on the clock of the site', () => {
    const { request } = build(of({ whenText: '2026-03-03T02:10', note: 'x' }), 'R', 'America/New_York', now);
    expect(request.sampledAt).toBe('2026-03-03T07:10:00.000Z');
  });

  it('names every field that needs mending', () => {
    const { errors } = build(of({
      poolId: '', whenText: '2026-03-04T10:00', rows: { free_chlorine: row('-1'), ph: row('74'), total_chlorine: row('1,2,3'), calcium_hardness: row('200', { dilution: '0' }) }, panel: { p: 'x' }, bathers: '2,5',
    }), '', 'UTC', now);
    expect(Object.keys(errors).sort()).toEqual(['bathers', 'dilution-calcium_hardness', 'free_chlorine', 'panel-p', 'ph', 'pool', 'total_chlorine', 'when', 'who'].sort());
  });

  it('is not empty', () => expect(build(of({}), 'R', 'UTC', now).errors).toHaveProperty('form'));

  it('puts the remarks of the server beside the fields', () => {
    const { request } = build(of({ rows: { ph: row('7.4'), free_chlorine: row('1') }, panel: { 'main-ph': '7.5' } }), 'R', 'UTC', now);
    const said = (field: string, text: string) => ({ field, code: 'c', text });
    expect(errorsOf([said('results[1].value', 'no pH'), said('panel[0].value', 'no panel'), said('sampledAt', 'tomorrow'), said('somewhere', 'else')], request))
      .toEqual({ ph: 'no pH', 'panel-main-ph': 'no panel', when: 'tomorrow', form: 'else' });
  });

  it('comes back into the form as it was typed', () => {
    const typed = of({ rows: { free_chlorine: row('1.1', { dilution: '10' }), ph: row('7.42') }, panel: { 'main-ph': '7.6' }, bathers: '3', bottom: 'yes', note: 'n' });
    const back = draftOf(build(typed, 'R', 'UTC', now).request);
    expect(back.rows).toEqual(typed.rows);
    expect([back.panel, back.bathers, back.bottom, back.note]).toEqual([typed.panel, '3', 'yes', 'n']);
  });

  it('takes degrees Fahrenheit where people use them, of the test and of the panel, and gives them back', () => {
    siteUnits.value = 'us';
    try {
      const measures = (probe: string) => probe === 'main-t' ? 'temperature' as const : 'ph' as const;
      const { request } = build({ ...emptyDraft('main'), rows: { temperature: row('82.4', { method: 'meter' }) }, panel: { 'main-t': '86', 'main-ph': '7.6' } }, 'A', 'UTC', 0, measures);
      expect(request.results[0]!.value).toBe(28);
      expect(request.panel).toEqual([{ probeId: 'main-t', value: 30 }, { probeId: 'main-ph', value: 7.6 }]);
      const again = draftOf(request, measures);
      expect([again.rows.temperature!.text, again.panel]).toEqual(['82.4', { 'main-t': '86', 'main-ph': '7.6' }]);
    } finally { siteUnits.value = 'metric'; }
  });
});
