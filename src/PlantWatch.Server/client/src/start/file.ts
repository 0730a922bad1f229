import type { Json } from '../contract.plantFile';
import type { Measurand } from '../contract';
import { fixed } from '../format/number';

// What the plant file says so far, read from its tree; the steps are made from nothing else.

type Keys = { [key: string]: Json };
const keys = (j: Json | undefined): Keys => (j !== null && typeof j === 'object' && !Array.isArray(j) ? j : {});
const list = (j: Json | undefined): Keys[] => (Array.isArray(j) ? j.map(keys) : []);
const text = (j: Json | undefined): string => (typeof j === 'string' ? j : '');

export interface PoolSoFar { id: string; name: string; circuit: number; circuitName: string }
export interface SoFar { site: Keys; named: boolean; circuits: Keys[]; pools: PoolSoFar[]; probes: { id: string; name: string }[]; pack: string; ids: Set<string>; has: (key: string) => boolean; confirmed: boolean; checks: boolean; pumps: boolean; limited: boolean }

export function soFar(tree: Json): SoFar {
  const root = keys(tree), site = keys(root['site']), circuits = list(root['circuits']);
  const pools = circuits.flatMap((c, i) => list(c['pools']).map(p => ({ ...p, circuit: i, circuitName: text(c['name']), id: text(p['id']), name: text(p['name']) })));
  const of = (key: string) => circuits.flatMap(c => list(c[key]));
  const probes = of('probes').map(p => ({ id: text(p['id']), name: text(p['name']) }));
  const ids = new Set([...circuits, ...pools, ...of('probes'), ...of('pumps'), ...of('filters'), ...list(root['reagents']), ...list(keys(root['telling'])['channels'])].map(x => text((x as Keys)['id'])).concat('unclaimed'));
  const poolKeys = circuits.flatMap(c => list(c['pools']));
  return {
    site, named: text(site['name']) !== '' && text(site['time_zone']) !== '', circuits, pools, probes, pack: text(root['limit_pack']), ids, has: key => root[key] !== undefined && list(root[key]).length > 0,
    confirmed: poolKeys.length > 0 && poolKeys.every(p => p['volume_confirmed'] !== undefined), limited: poolKeys.some(p => list(p['limits']).length > 0), checks: poolKeys.some(p => list(p['checks']).length > 0), pumps: of('pumps').length > 0,
  };
}

export const steps = ['site', 'pool', 'probe', 'pack', 'value'] as const;
export type Step = (typeof steps)[number];

/** Where to go on: at the first thing that the file does not say yet. What may be left out and was is remembered on the device; a plant that says what comes later has left it out too. */
export function firstOpen(file: SoFar, left: ReadonlySet<string>): Step {
  if (!file.named) return 'site';
  if (file.pools.length === 0) return 'pool';
  const limits = file.pack !== '' || file.limited;
  if (!left.has('probe') && !limits && !file.pumps && !file.checks) return 'probe';
  return limits || left.has('pack') ? 'value' : 'pack';
}

/** Seconds between two messages as people say them: 2, 2.5, 30. */
export function everyText(seconds: number): string {
  const tenths = Math.round(seconds * 10) / 10;
  return fixed(tenths, tenths >= 10 || Number.isInteger(tenths) ? 0 : 1);
}

/** A key made of a name: letters and digits of the Latin alphabet, and free among those taken. */
export function idOf(name: string, taken: ReadonlySet<string>, otherwise: string): string {
  const plain = name.toLowerCase().replaceAll('\u00e4', 'ae').replaceAll('\u00f6', 'oe').replaceAll('\u00fc', 'ue').replaceAll('\u00df', 'ss').normalize('NFD').replace(/[^a-z0-9]+/g, '-').replace(/^-+|-+$/g, '').slice(0, 50).replace(/-+$/, '');
  const base = plain || otherwise;
  for (let n = 1; ; n++) {
    const id = n === 1 ? base : `${base}-${n}`;
    if (!taken.has(id)) return id;
  }
}

/** What instruments of the kind usually span: a beginning for the form, to be held against the instrument. */
export const usualRange: Partial<Record<Measurand, [number, number]>> = {
  ph: [0, 14], orp: [0, 1000], temperature: [0, 60], conductivity: [0, 20000], free_chlorine: [0, 10], total_chlorine: [0, 10], sample_flow: [0, 1], circulation_flow: [0, 1000], filter_pressure: [0, 400],
};

export const probeKinds = ['ph', 'orp', 'temperature', 'conductivity', 'free_chlorine', 'total_chlorine', 'sample_flow', 'circulation_flow', 'filter_pressure'] as const;

/** Units that a number may come in other than its own, the own one first. */
export const sentIn: Partial<Record<Measurand, [string, string][]>> = {
  orp: [['', 'mV'], ['V', 'V']], temperature: [['', '\u00b0C'], ['degF', '\u00b0F'], ['K', 'K']], conductivity: [['', '\u00b5S/cm'], ['mS/cm', 'mS/cm'], ['S/m', 'S/m']],
};

/** A number as people type it, with a comma or a point; null for none, undefined for what is no number. */
export function typed(said: string): number | null | undefined {
  const t = said.trim().replace(',', '.');
  if (t === '') return null;
  return /^-?\d+(\.\d+)?$/.test(t) ? Number(t) : undefined;
}
