import { computed, effect, signal } from '@preact/signals';
import { recall, recallJson, remember } from '../api/kept';
import type { AlarmView } from '../contract';
import { now } from '../live/clock';
import { life } from '../live/connection';
import { asHeard } from '../live/heard';
import { alarms } from '../live/store';
import { callsOf, gravestOf, keyOf, loudOf } from './calls';
import { allowed, play, unlock } from './speaker';
import { giveUpTurn, takeTurn, turn } from './turn';
import { secondsOf, tones, type Call } from './tones';

/** A connection may stumble; after this it is told by sound too. */
const stumble = 20_000;

const wanted = signal(recall('sound') === 'on');
const silenced = signal<ReadonlySet<string>>(new Set(recallJson<string[]>('silenced') ?? []));

/** Off, or on but not yet allowed by the browser, or on in another tab, or on here. */
export const soundState = computed(() => (!wanted.value ? 'off' : !allowed.value ? 'waiting' : turn.value ? 'on' : 'elsewhere'));

const lostSince = computed(() => (life.value.state === 'lost' && now.value - life.value.since > stumble ? life.value.since : null));
// What was kept from another day may long be over: it is shown, and does not call.
const loud = computed(() => loudOf(callsOf(asHeard.value === null ? alarms.value : [], lostSince.value), silenced.value));

/** What is heard now, here; null when nothing is. */
export const sounding = signal<Call | null>(null);

/** It would be heard if sound is on: nobody has silenced it. */
export const isLoud = (a: AlarmView) => loud.value.some(c => c.key === keyOf(a));
export const anyLoud = computed(() => loud.value.length > 0);

function setSilenced(keys: ReadonlySet<string>): void {
  silenced.value = keys;
  remember('silenced', JSON.stringify([...keys]));
}

/** Silences what sounds now, or one alarm. Acknowledging is something else: it still stands and still says so. */
export function silence(one?: AlarmView): void {
  const current = new Set(callsOf(alarms.value, lostSince.value).map(c => c.key));
  const more = one ? [keyOf(one)] : loud.value.map(c => c.key);
  setSilenced(new Set([...silenced.value, ...more].filter(k => current.has(k))));
}

export async function turnOn(): Promise<void> {
  wanted.value = true;
  remember('sound', 'on');
  if (await unlock()) takeTurn();
}

export function turnOff(): void {
  wanted.value = false;
  remember('sound', 'off');
  giveUpTurn();
}

/** Lets a figure be heard once, whether sound is on or not. */
export async function tryOut(call: Call): Promise<boolean> {
  if (!(await unlock())) return false;
  play(tones[call]);
  return true;
}

/** What is said as one text changes only when something else is to be heard. */
const score = computed(() => (soundState.value === 'on' ? `${gravestOf(loud.value) ?? ''}|${loud.value.map(c => c.key).join()}` : '|'));

export function startSound(): void {
  let timer: ReturnType<typeof setTimeout> | undefined, hush = () => {};
  effect(() => {
    const call = (score.value.split('|')[0] || null) as Call | null;
    clearTimeout(timer);
    hush();
    hush = () => {};
    sounding.value = call;
    if (call) go(call);
  });

  function go(call: Call): void {
    hush = play(tones[call]);
    const { every } = tones[call];
    timer = setTimeout(() => { if (every) go(call); else sounding.value = null; }, (every ?? secondsOf(tones[call])) * 1000);
  }

  // The first press anywhere is enough for a browser in which somebody has turned sound on before.
  const touched = () => { if (wanted.value && !allowed.value) void unlock().then(may => { if (may && wanted.value) takeTurn(); }); };
  for (const kind of ['pointerdown', 'keydown']) addEventListener(kind, touched, { capture: true });

  addEventListener('storage', e => {
    if (e.key === 'plantwatch.silenced') silenced.value = new Set(recallJson<string[]>('silenced') ?? []);
    if (e.key !== 'plantwatch.sound') return;
    wanted.value = recall('sound') === 'on';
    if (!wanted.value) giveUpTurn();
    else if (allowed.value) takeTurn();
  });
}
