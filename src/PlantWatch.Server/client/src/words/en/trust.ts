// Which to believe, the probe or the test.
import type { StoryPart, StoryWeight } from '../../contract.trust';

export const trust = {
  title: 'Which to believe',
  byCheck: 'By the check of', noCheck: 'No check yet',
  weight: { none: '', leans: 'It leans that way', likely: 'Likely', strong: 'As good as certain' } as Record<StoryWeight, string>,
  odds: (weight: string, odds: number) => `${weight}: about ${odds >= 1000 ? 'a thousand' : odds >= 10 ? Math.round(odds) : odds.toFixed(1)} to 1 against the next explanation`,
  next: 'What to do next', minutes: (n: number) => `about ${n} min`,
  advice: 'Advice, most useful first. Stops and limits hold meanwhile.',
  whatSpeaks: 'All signs, and who may be wrong', whoMayBeWrong: 'Who may be wrong',
  part: {
    none: 'nobody', ph_test: 'pH test', ph_probe: 'pH probe', chlorine_test: 'chlorine test', chlorine_probe: 'chlorine probe', orp_probe: 'ORP probe',
  } as Record<StoryPart, string>,
  speaks: (part: string, ratio: number) => ratio > 1.15 ? `against the ${part}, ${times(ratio)}` : ratio < 0.87 ? `for the ${part}, ${times(1 / ratio)}` : '',
  between: 'Until it is settled the water may lie anywhere in',
  worse: 'Act by the worse end.',
  testBy: (clock: string) => `Test by hand until ${clock}`, testLate: (clock: string) => `A test by hand was wanted until ${clock}`,
  panel: 'Panel', received: 'Received', corrected: 'Corrected', test: 'Test', believed: 'Believed', expected: 'Expected',
  panelDiffers: 'Panel and received number differ', waiting: 'Weighing the signs', sides: 'Side by side at the sample',
};

function times(n: number): string {
  return n >= 100 ? '\u00d7\u2009100 and more' : `\u00d7\u2009${n >= 10 ? Math.round(n) : n.toFixed(1)}`;
}
