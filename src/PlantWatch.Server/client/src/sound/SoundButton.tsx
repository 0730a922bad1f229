import { words } from '../words';
import { sounding, silence, soundState, turnOff, turnOn } from './sound';
import { SpeakerGlyph } from './SpeakerGlyph';

const w = words.sound;

/** Beside the bar: silences what is heard; else says whether anything can be heard here, and turns it on or off. */
export function SoundButton() {
  const state = soundState.value, heard = sounding.value;
  if (heard) return <button type="button" class="sound-button sounds" data-testid="silence" data-sounding={heard} onClick={() => silence()}><SpeakerGlyph on />{w.silence}</button>;
  const on = state === 'on' || state === 'elsewhere';
  return (
    <button type="button" class={`sound-button ${on ? 'is-on' : 'is-off'}`} data-testid="sound" data-state={state} aria-label={w.state[state]} title={w.state[state]} onClick={() => (on ? turnOff() : void turnOn())}>
      <SpeakerGlyph on={on} />{!on && <span class="sound-said" aria-hidden="true"><span>{w.off}</span> <u>{w.turnOn}</u></span>}
    </button>
  );
}
