import type { CheckRequest, FieldSaid, Measurand, PanelReading, TestResult } from '../contract';
import { readTyped } from '../format/number';
import { asSi } from '../format/units';
import { fromField } from '../format/zone';
import { words } from '../words';
import { rowOf, tested, type Draft, type Row } from './draft';
import { countsTablets, looksOf, tabletStep, usualSample } from './methods';

/** Remarks by field name; the name is also the end of the field's test id. */
export type Errors = Record<string, string>;

export interface Built { request: CheckRequest; errors: Errors }

/** Reads the draft. With errors the request is not to be sent. The server is the referee; here only what it would surely refuse. */
export function build(d: Draft, who: string, zone: string, now: number, measures: (probeId: string) => Measurand = () => 'none'): Built {
  const errors: Errors = {};
  const sampledAt = sampleTime(d, zone, now);
  if (!d.poolId) errors['pool'] = words.check.needPool;
  if (!who.trim()) errors['who'] = words.check.needWho;
  if (sampledAt === null) errors['when'] = words.check.needTime;
  else if (sampledAt > now + 120_000) errors['when'] = words.check.future;
  const request: CheckRequest = {
    poolId: d.poolId, sampledAt: new Date(sampledAt ?? now).toISOString(), enteredAt: new Date(now).toISOString(), who: who.trim(),
    point: d.point, place: d.place.trim() || null, results: results(d, errors), panel: panel(d, errors, measures),
    bottomVisible: d.bottom === '' ? null : d.bottom === 'yes', bathers: bathers(d, errors), note: d.note.trim() || null,
  };
  const something = request.results.length + request.panel.length > 0 || request.bottomVisible !== null || request.bathers !== null || request.note !== null;
  if (!something && Object.keys(errors).every(k => k === 'who' || k === 'pool' || k === 'when')) errors['form'] = words.check.needSomething;
  return { request, errors };
}

export function sampleTime(d: Draft, zone: string, now: number): number | null {
  return d.whenText !== '' ? fromField(d.whenText, zone) : d.whenExact ?? now;
}

/** The factor of a row; 1 when nothing was typed, null when it is no factor. */
export function dilutionOf(text: string): number | null {
  const typed = readTyped(text);
  if (typed.kind === 'empty') return 1;
  return typed.kind === 'number' && typed.value >= 1 ? typed.value : null;
}

/** The result of a row with its dilution; null while it is none. */
export function resultOf(d: Draft, m: Measurand): number | null {
  const row = rowOf(d, m);
  const typed = readTyped(row.text);
  const factor = dilutionOf(row.dilution);
  // Without rounding 1.1 times 10 would be sent as 11.000000000000002.
  return typed.kind === 'number' && factor !== null ? Math.round(asSi(m, typed.value) * factor * 1e6) / 1e6 : null;
}

function results(d: Draft, errors: Errors): TestResult[] {
  const found: TestResult[] = [];
  for (const m of tested) {
    const row = rowOf(d, m);
    const typed = readTyped(row.text);
    if (typed.kind === 'empty') continue;
    const factor = dilutionOf(row.dilution);
    if (typed.kind === 'wrong') errors[m] = words.check.notNumber;
    else if (typed.value < 0 && m !== 'temperature') errors[m] = words.check.negative;
    else if (m === 'ph' && typed.value > 14) errors[m] = words.check.phRange;
    if (factor === null) errors['dilution-' + m] = words.check.dilutionLow;
    const value = resultOf(d, m);
    if (value !== null) found.push({ measurand: m, value, method: row.method, censoring: row.bound, dilution: factor ?? 1, ...hand(m, row) });
  }
  return found;
}

/** What the hand method adds: the step of a count in another sample than the usual, and an odd look of the cell. */
function hand(m: Measurand, row: Row): Pick<TestResult, 'step' | 'look'> {
  const step = countsTablets(m, row) && (row.sample ?? usualSample) !== usualSample ? tabletStep(row) : null;
  const look = row.look && looksOf(m, row).includes(row.look) ? row.look : 'none';
  return { ...(step === null ? {} : { step }), ...(look === 'none' ? {} : { look }) };
}

function panel(d: Draft, errors: Errors, measures: (probeId: string) => Measurand): PanelReading[] {
  const found: PanelReading[] = [];
  for (const [probeId, text] of Object.entries(d.panel)) {
    const typed = readTyped(text);
    if (typed.kind === 'wrong') errors['panel-' + probeId] = words.check.notNumber;
    if (typed.kind === 'number') found.push({ probeId, value: asSi(measures(probeId), typed.value) });
  }
  return found;
}

function bathers(d: Draft, errors: Errors): number | null {
  const typed = readTyped(d.bathers);
  if (typed.kind === 'empty') return null;
  if (typed.kind === 'number' && Number.isInteger(typed.value) && typed.value >= 0) return typed.value;
  errors['bathers'] = words.check.whole;
  return null;
}

/** The server names fields by their path in the request; the form by measurand and probe. */
export function fieldOf(path: string, request: CheckRequest): string {
  const result = /^results\[(\d+)\](?:\.(\w+))?/.exec(path);
  if (result) {
    const m = request.results[Number(result[1])]?.measurand;
    return m ? (result[2] === 'dilution' ? 'dilution-' + m : m) : 'form';
  }
  const panel = /^panel\[(\d+)\]/.exec(path);
  if (panel) return request.panel[Number(panel[1])] ? 'panel-' + request.panel[Number(panel[1])]!.probeId : 'form';
  const names: Record<string, string> = { poolId: 'pool', sampledAt: 'when', who: 'who', point: 'point', place: 'place', bathers: 'bathers', note: 'note', bottomVisible: 'bottom' };
  return names[path] ?? 'form';
}

export function errorsOf(said: FieldSaid[], request: CheckRequest): Errors {
  const errors: Errors = {};
  for (const s of said) {
    const field = fieldOf(s.field, request);
    errors[field] = errors[field] ? `${errors[field]} ${s.text}` : s.text;
  }
  return errors;
}
