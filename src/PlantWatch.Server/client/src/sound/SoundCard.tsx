import { useState } from 'preact/hooks';
import { words } from '../words';
import { soundState, tryOut, turnOff, turnOn } from './sound';
import { order, type Call } from './tones';

const w = words.sound;

/** Sound in this browser: whether it is on, and how each kind of call sounds. */
export function SoundCard() {
  const [said, say] = useState('');
  const state = soundState.value, on = state === 'on' || state === 'elsewhere';
  const hear = (call: Call) => void tryOut(call).then(heard => say(heard ? w.played(w.calls[call]) : w.notAllowed));
  return (
    <section class="sheet card" data-testid="sound-card">
      <h2>{w.title}</h2>
      <p>{w.now[state]}</p>
      <p class="hint">{w.lead}</p>
      <div class="inline"><button type="button" data-testid="sound-toggle" onClick={() => (on ? turnOff() : void turnOn())}>{on ? w.doTurnOff : w.doTurnOn}</button></div>
      <h3>{w.test}</h3>
      <div class="inline">{order.map(call => <button type="button" key={call} data-testid={`test-sound-${call}`} onClick={() => hear(call)}>{w.calls[call]}</button>)}</div>
      <p class="hint" role="status" data-testid="sound-played">{said}</p>
    </section>
  );
}
