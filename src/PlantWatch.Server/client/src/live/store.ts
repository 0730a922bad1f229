import { batch, computed, effect, signal, type Signal } from '@preact/signals';
import type {
  AlarmView, CircuitInfo, CircuitView, HealthView, LimitBand, Measurand, PoolInfo, PoolView, ProbeInfo, ProbeView, PumpInfo, PumpView, ReadingPoint, ReadingsDelta, SiteView,
} from '../contract';
import { recallJson, remember } from '../api/kept';
import { siteUnits } from '../format/units';
import { words } from '../words';

/** The fixed facts. The last ones are kept on the device, so that the check form works without signal. */
export const site = signal<SiteView | null>(recallJson<SiteView>('site'));

export const circuits = signal<ReadonlyMap<string, CircuitView>>(new Map());
export const health = signal<HealthView | null>(null);
const readings = new Map<string, Signal<ReadingPoint | null>>();

/** Newest reading of a series; its own signal, so that one value redraws one cell. */
export function reading(series: string): Signal<ReadingPoint | null> {
  let found = readings.get(series);
  if (!found) readings.set(series, found = signal<ReadingPoint | null>(null));
  return found;
}

export function tookSite(view: SiteView): void {
  site.value = view;
  remember('site', JSON.stringify(view));
  // A circuit that the plant file no longer names is gone: its alarms can be neither answered nor heard any more.
  const gone = [...circuits.peek().keys()].filter(id => !view.circuits.some(c => c.id === id));
  if (gone.length > 0) circuits.value = new Map([...circuits.peek()].filter(([id]) => !gone.includes(id)));
}

export function tookCircuit(view: CircuitView, fresh = false): void {
  const known = circuits.value.get(view.id);
  // After a restart of the server the versions start again, so the first view of a connection always counts.
  if (known && !fresh && view.version < known.version) return;
  batch(() => {
    circuits.value = new Map(circuits.value).set(view.id, view);
    for (const p of view.probes) {
      if (p.at === null || p.value === null) continue;
      const t = Date.parse(p.at);
      const cell = reading(p.id);
      if (fresh || !cell.value || cell.value.t <= t) cell.value = { s: p.id, t, r: p.raw ?? p.value, v: p.value, g: p.good };
    }
  });
}

type Listener = (delta: ReadingPoint[]) => void;
const listeners = new Set<Listener>();

/** Called with every delta, for the strips that append live. Returns how to stop. */
export function onReadings(listener: Listener): () => void {
  listeners.add(listener);
  return () => { listeners.delete(listener); };
}

export function tookReadings(delta: ReadingsDelta): void {
  batch(() => {
    for (const point of delta.readings) {
      const cell = reading(point.s);
      if (!cell.value || cell.value.t <= point.t) cell.value = point;
    }
  });
  for (const listener of listeners) listener(delta.readings);
}

// ---- views over the store

export const allProbes = computed<Map<string, ProbeInfo>>(() => new Map((site.value?.circuits ?? []).flatMap(c => c.probes).map(p => [p.id, p])));
export const allPumps = computed<Map<string, PumpInfo>>(() => new Map((site.value?.circuits ?? []).flatMap(c => c.pumps).map(p => [p.id, p])));
export const allPools = computed<Map<string, PoolInfo>>(() => new Map((site.value?.circuits ?? []).flatMap(c => c.pools).map(p => [p.id, p])));
export const probeViews = computed<Map<string, ProbeView>>(() => new Map([...circuits.value.values()].flatMap(c => c.probes).map(p => [p.id, p])));
export const pumpViews = computed<Map<string, PumpView>>(() => new Map([...circuits.value.values()].flatMap(c => c.pumps).map(p => [p.id, p])));
export const poolViews = computed<Map<string, PoolView>>(() => new Map([...circuits.value.values()].flatMap(c => c.pools).map(p => [p.id, p])));

const none: readonly LimitBand[] = [];
let kept = new Map<string, { text: string; bands: readonly LimitBand[] }>();

/** What the values of each pool are held against: the limits in force, and those of the plant file until they are told. The same array while nothing changed, so that nothing is drawn anew. */
const bands = computed<Map<string, { text: string; bands: readonly LimitBand[] }>>(() => {
  kept = new Map([...allPools.value.values()].map(p => {
    const now = poolViews.value.get(p.id)?.limits?.bands ?? p.limits, text = JSON.stringify(now), before = kept.get(p.id);
    return [p.id, before?.text === text ? before : { text, bands: now }];
  }));
  return kept;
});

export const limitsOfPool = (poolId: string | null | undefined): readonly LimitBand[] => (poolId && bands.value.get(poolId)?.bands) || none;

/** The pool whose limits a probe is held to: its own; for one of the common return the pool that is looked at, or the only one of its circuit. Null where several could be meant. */
export function limitingPool(probe: ProbeInfo, looked: string | null): string | null {
  const pools = site.value?.circuits.find(c => c.probes.some(p => p.id === probe.id))?.pools ?? [];
  return probe.poolId ?? looked ?? (pools.length === 1 ? pools[0]!.id : null);
}

export const alarms = computed<AlarmView[]>(() => [...circuits.value.values()].flatMap(c => c.alarms));

/** What a probe measures; none for one that is not known. */
export const measures = (probeId: string): Measurand => allProbes.value.get(probeId)?.measurand ?? 'none';

effect(() => { siteUnits.value = site.value?.units ?? 'metric'; });

export const zone = computed(() => site.value?.timeZone ?? 'UTC');

export const circuitOfPool = (poolId: string): CircuitInfo | undefined => site.value?.circuits.find(c => c.pools.some(p => p.id === poolId));

/** Tells of the plant room and not of a pool's water: circulation and filters stand with the pumps. */
export const isOfPlantRoom = (m: Measurand) => m === 'circulation_flow' || m === 'filter_pressure';

/** Probes that see a pool's water: its own, then those of the mixed return. Flow switches come last. */
export function probesOfPool(poolId: string): ProbeInfo[] {
  const all = circuitOfPool(poolId)?.probes.filter(p => (p.poolId === poolId || p.poolId === null) && !isOfPlantRoom(p.measurand)) ?? [];
  const rank = (p: ProbeInfo) => (p.measurand === 'sample_flow' ? 2 : 0) + (p.poolId === null ? 1 : 0);
  return [...all].sort((a, b) => rank(a) - rank(b));
}

/** The heading of a probe among others: what it measures, or its own name where two measure the same. */
export const headingOf = (probe: ProbeInfo, beside: ProbeInfo[]): string =>
  beside.some(p => p.id !== probe.id && p.measurand === probe.measurand) ? probe.name : words.measurand[probe.measurand];

/** What people call the thing that an alarm or a note is about. */
export function nameOf(subject: string): string {
  const pool = allPools.value.get(subject);
  if (pool) return pool.name;
  // A limit watches one quantity of a pool: main/ph.
  const [poolId, quantity] = subject.split('/');
  const inPool = quantity ? allPools.value.get(poolId!) : undefined;
  if (inPool) return `${inPool.name}, ${words.measurand[quantity as Measurand] ?? words.watched[quantity!] ?? quantity}`;
  const thing = allProbes.value.get(subject) ?? allPumps.value.get(subject);
  if (!thing) return subject;
  // Plants call every pH probe "pH": away from its pool the name needs the pool.
  const home = (thing.poolId && allPools.value.get(thing.poolId)?.name) || '';
  return home && !thing.name.toLowerCase().includes(home.toLowerCase()) ? `${home}, ${thing.name}` : thing.name;
}
