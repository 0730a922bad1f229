import { HubConnectionBuilder, LogLevel, type HubConnection } from '@microsoft/signalr';
import { effect, signal } from '@preact/signals';
import type { CircuitView, HealthView, ReadingsDelta, SiteView } from '../contract';
import type { BoardLine } from '../contract.boards';
import { get } from '../api/http';
import { language } from '../format/language';
import { wait } from './backoff';
import { boards } from './boards';
import { heardServerTime, now, serverNow } from './clock';
import { health, site, tookCircuit, tookReadings, tookSite } from './store';

/** The server speaks at least every five seconds; after twelve in silence the page is not live, whatever the socket says. */
const silence = 12_000;

export type Life = { state: 'connecting' | 'live' | 'lost'; since: number };
export const life = signal<Life>({ state: 'connecting', since: Date.now() });

const arrivals = new Set<() => void>();

/** Called each time the page becomes live again: pages fetch anew what the hub does not push. Returns how to stop. */
export function onLive(action: () => void): () => void {
  arrivals.add(action);
  return () => { arrivals.delete(action); };
}

let hub: HubConnection | null = null;
let lastSign = 0;
let tries = 0;
let begun = 0;
let timer: ReturnType<typeof setTimeout> | undefined;
let fresh = new Set<string>();

function say(state: Life['state'], since: number): void {
  if (life.value.state !== state) life.value = { state, since };
}

function sign(): void {
  lastSign = performance.now();
  if (life.value.state === 'live') return;
  say('live', serverNow());
  for (const action of arrivals) action();
}

function lost(): void {
  if (life.value.state === 'live') say('lost', serverNow());
}

async function connect(): Promise<void> {
  clearTimeout(timer);
  begun = performance.now();
  const mine = new HubConnectionBuilder().withUrl(`/live?language=${language}`).configureLogging(LogLevel.None).build();
  hub = mine;
  mine.serverTimeoutInMilliseconds = 15_000;
  mine.keepAliveIntervalInMilliseconds = 5_000;
  const seen = fresh = new Set<string>();
  // The server greets with every circuit and then with its health: before that, part of what stands here may be of an earlier time.
  let greeted = false;
  mine.on('circuit', (view: CircuitView) => {
    heardServerTime(view.at);
    const first = !seen.has(view.id);
    seen.add(view.id);
    tookCircuit(view, first);
    if (greeted) sign();
    if (isNews(view)) void refetch();
  });
  mine.on('readings', (delta: ReadingsDelta) => tookReadings(delta));
  mine.on('boards', (lines: BoardLine[]) => { boards.value = lines; });
  mine.on('health', (view: HealthView) => { heardServerTime(view.at); health.value = view; greeted = true; sign(); });
  mine.onclose(() => { if (hub === mine) again(); });
  try {
    await mine.start();
    tries = 0;
    await refetch();
  } catch {
    if (hub === mine) again();
  }
}

const askedFor = new Set<string>();

/** The plant file names something that this page has not heard of, or has elsewhere: the site is asked for anew. */
function isNews(view: CircuitView): boolean {
  const known = site.peek()?.circuits.find(c => c.id === view.id);
  if (site.peek() === null || known && view.pools.every(p => known.pools.some(k => k.id === p.id)) && view.probes.every(p => known.probes.some(k => k.id === p.id))) return false;
  // Asked once for each: what the site still does not name then is not asked for with every view.
  const key = [view.id, ...view.pools.map(p => p.id), ...view.probes.map(p => p.id)].join(' ');
  return !askedFor.has(key) && !!askedFor.add(key);
}

/** Fetches what changes with the plant file only. */
export async function refetch(): Promise<void> {
  const answer = await get<SiteView>('/site');
  if (!answer.ok) return;
  tookSite(answer.value);
  // The hub sends every circuit on connect; asking as well makes the first picture sure even if it was missed.
  for (const circuit of answer.value.circuits) {
    if (fresh.has(circuit.id)) continue;
    const view = await get<CircuitView>('/circuits/' + encodeURIComponent(circuit.id));
    if (view.ok && !fresh.has(circuit.id)) tookCircuit(view.value, true);
  }
}

function again(): void {
  hub = null;
  lost();
  clearTimeout(timer);
  timer = setTimeout(() => void connect(), wait(tries++));
}

/** Drops what there is and connects at once. */
function hurry(): void {
  const old = hub;
  hub = null;
  tries = 0;
  void old?.stop().catch(() => {});
  void connect();
}

export function startLive(): void {
  void connect();
  effect(() => {
    now.value;
    const t = performance.now(), live = life.peek().state === 'live';
    if (live && t - lastSign > silence) { lost(); hurry(); }
    // A server that takes the connection and then says nothing is no server.
    if (!live && hub && t - begun > 2 * silence) hurry();
  });
  addEventListener('online', () => { if (life.value.state !== 'live') hurry(); });
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible' && life.value.state !== 'live') hurry();
  });
  // A site that the device remembers is better than none, but the plant may have changed since.
  if (site.value === null) void refetch();
}
