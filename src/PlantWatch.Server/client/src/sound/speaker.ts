import { signal } from '@preact/signals';
import { secondsOf, type Tone } from './tones';

// Browsers let a page sound only after a person has touched it: until then the context is suspended.

let context: AudioContext | null = null;

/** The browser lets this page be heard. */
export const allowed = signal(false);

function made(): AudioContext | null {
  if (context) return context;
  try {
    context = new AudioContext();
  } catch { return null; }
  context.onstatechange = () => { allowed.value = context?.state === 'running'; };
  allowed.value = context.state === 'running';
  return context;
}

/** Asks the browser; to be called from a press of a key or a button. True when it may be heard. */
export async function unlock(): Promise<boolean> {
  const c = made();
  if (!c) return false;
  try { await c.resume(); } catch { /* still not allowed */ }
  allowed.value = c.state === 'running';
  return allowed.value;
}

/** Plays a figure once. Returns how to stop it. */
export function play(tone: Tone): () => void {
  const c = context;
  if (!c || c.state !== 'running') return () => {};
  const out = c.createGain(), begin = c.currentTime + 0.03;
  out.gain.value = 0.35;
  out.connect(c.destination);
  for (const note of tone.notes) {
    // A second, softer voice an octave up is heard over pumps where a pure tone is masked.
    for (const [times, share] of [[1, 0.75], [2, 0.25]] as const) {
      const voice = c.createOscillator(), shape = c.createGain(), from = begin + note.at, to = from + note.lasts;
      voice.frequency.value = note.hertz * times;
      // Without a rise and a fall every note begins and ends with a click.
      shape.gain.setValueAtTime(0, from);
      shape.gain.linearRampToValueAtTime(note.loud * share, from + 0.012);
      shape.gain.setValueAtTime(note.loud * share, to - 0.03);
      shape.gain.linearRampToValueAtTime(0, to);
      voice.connect(shape).connect(out);
      voice.start(from);
      voice.stop(to + 0.02);
    }
  }
  const done = setTimeout(() => out.disconnect(), (secondsOf(tone) + 0.3) * 1000);
  return () => { clearTimeout(done); out.disconnect(); };
}
