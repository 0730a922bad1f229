import { signal } from '@preact/signals';
import { asTyped } from '../format/units';
import { recall, recallJson, remember } from '../api/kept';
import type { CellLook, Censoring, CheckRequest, Measurand, SamplePoint, TestMethod } from '../contract';

/** One result as typed. */
export interface Row { text: string; bound: Censoring; method: TestMethod; dilution: string; tablets?: string; sample?: string; look?: CellLook }

/** The form as typed, every field a text: nothing is lost, nothing is understood yet. */
export interface Draft {
  poolId: string;
  /** Sample time in Unix milliseconds while nobody touched the field; null follows the clock. */
  whenExact: number | null;
  /** What was chosen in the time field; empty until then. */
  whenText: string;
  point: SamplePoint;
  place: string;
  rows: Partial<Record<Measurand, Row>>;
  panel: Record<string, string>;
  bottom: '' | 'yes' | 'no';
  bathers: string;
  note: string;
}

export const chlorineAndPh: Measurand[] = ['free_chlorine', 'total_chlorine', 'ph', 'temperature'];
export const balanceTests: Measurand[] = ['total_alkalinity', 'calcium_hardness', 'cyanuric_acid', 'dissolved_solids', 'turbidity'];
export const tested: Measurand[] = ['bromine', ...chlorineAndPh, ...balanceTests];

const offered: Partial<Record<Measurand, TestMethod[]>> = {
  temperature: ['meter'], dissolved_solids: ['meter'], turbidity: ['meter'], ph: ['photometer', 'comparator', 'meter'], cyanuric_acid: ['photometer', 'comparator', 'tablet_count'],
  total_alkalinity: ['photometer', 'tablet_count', 'comparator'], calcium_hardness: ['photometer', 'tablet_count', 'comparator'],
};

/** Methods that make sense for a measurand; the first is the default until somebody chooses another, which is then remembered. */
export const methodsOf = (m: Measurand): TestMethod[] => offered[m] ?? ['photometer', 'comparator'];

/** A diluted sample has another pH and temperature: dilution is for what scales with it. */
export const mayDilute = (m: Measurand) => m !== 'ph' && m !== 'temperature' && m !== 'turbidity';

const kept = (m: Measurand): TestMethod => {
  const method = recall('method.' + m) as TestMethod | null;
  return method && methodsOf(m).includes(method) ? method : methodsOf(m)[0]!;
};

export const rowOf = (draft: Draft, m: Measurand): Row => draft.rows[m] ?? { text: '', bound: 'none', method: kept(m), dilution: '' };

export const emptyDraft = (poolId = ''): Draft => ({
  poolId, whenExact: null, whenText: '', point: 'pool', place: '', rows: {}, panel: {}, bottom: '', bathers: '', note: '',
});

export const draft = signal<Draft>({ ...emptyDraft(), ...recallJson<Draft>('draft') });

/** Changes the draft and keeps it. */
export function edit(change: Partial<Draft>): void {
  draft.value = { ...draft.value, ...change };
  remember('draft', JSON.stringify(draft.value));
}

export function editRow(m: Measurand, change: Partial<Row>, pinnedAt: number): void {
  const d = draft.value;
  if (change.method) remember('method.' + m, change.method);
  edit({
    rows: { ...d.rows, [m]: { ...rowOf(d, m), ...change } },
    // The first typed result pins the sample time; until then the field follows the clock.
    whenExact: d.whenExact ?? (d.whenText === '' && change.text ? pinnedAt : null),
  });
}

export function clearDraft(): void {
  edit(emptyDraft(draft.value.poolId));
}

export const isTouched = (d: Draft) =>
  Object.values(d.rows).some(r => r && r.text !== '') || Object.values(d.panel).some(t => t !== '') || d.bottom !== '' || d.bathers !== '' || d.note !== '' || d.place !== '';

/** What stands in a field of the form, so that a remark can go when its field is changed. */
export function typedIn(d: Draft, who: string, field: string): string {
  if (field === 'form') return JSON.stringify([d, who]);
  if (field === 'who') return who;
  if (field === 'pool') return d.poolId;
  if (field === 'when') return `${d.whenText} ${d.whenExact}`;
  if (field.startsWith('panel-')) return d.panel[field.slice(6)] ?? '';
  const measurand = field.replace(/^dilution-/, '') as Measurand;
  if (tested.includes(measurand)) return JSON.stringify(d.rows[measurand] ?? null);
  return String(d[field as 'point' | 'place' | 'bottom' | 'bathers' | 'note'] ?? '');
}

/** A refused check as a draft again. */
export function draftOf(request: CheckRequest, measures: (probeId: string) => Measurand = () => 'none'): Draft {
  const rows: Draft['rows'] = {};
  for (const r of request.results) {
    const shown = asTyped(r.measurand, r.value / r.dilution);
    rows[r.measurand] = { text: String(Math.round(shown * 1e6) / 1e6), bound: r.censoring, method: r.method, dilution: r.dilution === 1 ? '' : String(r.dilution) };
    if (r.look && r.look !== 'none') rows[r.measurand]!.look = r.look;
    if (r.step && r.method === 'tablet_count') rows[r.measurand]!.sample = String(Math.round(2000 / r.step));
  }
  return {
    poolId: request.poolId, whenExact: Date.parse(request.sampledAt), whenText: '', point: request.point, place: request.place ?? '', rows,
    panel: Object.fromEntries(request.panel.map(p => [p.probeId, String(asTyped(measures(p.probeId), p.value))])),
    bottom: request.bottomVisible === null ? '' : request.bottomVisible ? 'yes' : 'no',
    bathers: request.bathers === null ? '' : String(request.bathers), note: request.note ?? '',
  };
}
